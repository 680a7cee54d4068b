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
    files: ['app/commands/**', 'tests/run.ts', 'tests/run/**', 'tests/mutate/**', 'tests/bench/**'],
    rules: { 'no-console': 'off' },
  },
  ...walls,
);
