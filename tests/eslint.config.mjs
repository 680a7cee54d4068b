import next from 'eslint-config-next/core-web-vitals';
import tseslint from 'typescript-eslint';
import { walls } from './walls.mjs';

/** Nothing is left as a warning: what is worth saying is worth mending. */
const asErrors = (configs) =>
  configs.map((config) => ({
    ...config,
    ...(config.rules && {
      rules: Object.fromEntries(
        Object.entries(config.rules).map(([name, setting]) => {
          const [level, ...options] = Array.isArray(setting) ? setting : [setting];
          return [name, level === 'warn' || level === 1 ? ['error', ...options] : setting];
        }),
      ),
    }),
  }));

/** What each exported function of lib is for, in its shapes, units and errors, stands right above it. */
const docstrings = {
  create(context) {
    const isFunction = ({ init }) => init?.type === 'ArrowFunctionExpression' || init?.type === 'FunctionExpression';
    return {
      ExportNamedDeclaration(node) {
        const { declaration } = node;
        const made =
          declaration?.type === 'FunctionDeclaration' ||
          (declaration?.type === 'VariableDeclaration' && declaration.declarations.some(isFunction));
        const above = context.sourceCode.getCommentsBefore(node).at(-1);
        if (made && !(above?.type === 'Block' && above.value.startsWith('*')))
          context.report({
            node,
            message: 'Say above it in a docstring what it gives, in which units, and when it throws.',
          });
      },
    };
  },
};

export default tseslint.config(
  { ignores: ['.next/**', 'out/**', 'node_modules/**', 'next-env.d.ts'] },
  ...asErrors(next),
  ...tseslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'hack', 'xxx'] }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['lib/**/*.ts'],
    plugins: { house: { rules: { docstrings } } },
    rules: { 'house/docstrings': 'error' },
  },
  {
    files: ['app/commands/**', 'tests/run.ts', 'tests/run/**', 'tests/mutate/**', 'tests/bench/**'],
    rules: { 'no-console': 'off' },
  },
  ...walls,
);
