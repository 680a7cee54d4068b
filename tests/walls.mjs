import { isBuiltin } from 'node:module';
import { dirname, join, relative } from 'node:path';

/**
 * The walls of the house as rules of the linter. Inside lib arrows go down only: a folder may import its own floor and the
 * ones below. They read import paths as text, so they hold for files not written yet.
 */
const floorsOfLib = [
  ['quantity'],
  ['physics'],
  ['tissue'],
  ['ascent', 'dive', 'exposure'],
  ['rules', 'steer'],
  ['sayings'],
  ['files', 'class', 'lesson', 'working', 'evidence', 'bench', 'curves', 'ways-out'],
];

/** Rooms of the app: each stands on the floors below and knows no other room. What two of them use moves down. */
export const rooms = [
  'access',
  'front',
  'desk',
  'lessons',
  'class',
  'bring',
  'bench',
  'curves',
  'gases',
  'evidence',
  'model',
  'licences',
  'offline',
  'alone',
];

/** What all rooms of the app stand on, each with the folders it may itself import. */
export const floorsOfApp = {
  stage: ['working', 'keep', 'pictures', 'parts'],
  working: ['pictures', 'parts'],
  pictures: ['parts'],
  keep: ['parts'],
  parts: [],
};

const floorOf = (folder) => floorsOfLib.findIndex((folders) => folders.includes(folder));

const onlyTests = 'Only tests import tests.';

function brokenByLib(folder, imported) {
  const [top, target] = imported.split('/');
  if (top === 'tests') return onlyTests;
  if (top === 'app') return 'lib is the engine: it never imports the screen in app/.';
  if (/^(react|react-dom|next)(\/|$)/.test(imported)) return 'lib has no React: it must work in plain Node.';
  if (/^d3(-|\/|$)/.test(imported)) return 'lib draws nothing: keep d3 in app/.';
  if (/^(zustand|idb|comlink|mrmime)(\/|$)/.test(imported))
    return 'lib has no screen, storage or server: keep this in app/.';
  if (isBuiltin(imported)) return 'lib runs in a browser too: no Node built-ins.';
  // A formula in MathML is part of a working: text made from text, with no screen in it.
  if (top === 'temml' && folder !== 'working') return 'Formulas are set in lib/working and app/ alone.';
  if (top === 'lib' && floorOf(target) > floorOf(folder))
    return `Inside lib arrows go down: ${floorsOfLib.map((folders) => folders.join(', ')).join(' ← ')}.`;
  return undefined;
}

function brokenByApp(folder, imported) {
  const [top, target] = imported.split('/');
  if (top === 'tests') return onlyTests;
  if (top !== 'app' || target === folder) return undefined;
  const below = floorsOfApp[folder];
  if (rooms.includes(target) && rooms.includes(folder))
    return 'A room imports no other room: what both need stands in app/stage, app/pictures or app/parts.';
  if (below && (rooms.includes(target) || target in floorsOfApp) && !below.includes(target))
    return `app/${folder} stands below the rooms: it imports ${below.map((one) => `app/${one}`).join(', ') || 'nothing of the app'}.`;
  return undefined;
}

const brokenByContent = (imported) =>
  /^(zod|content|lib)(\/|$)/.test(imported) ? undefined : 'content is data: it imports zod and types of lib, no more.';

/** What is wrong with a file's import, if anything. */
function broken(file, from) {
  const [top, folder] = file.split('/');
  const imported = from.startsWith('.') ? join(dirname(file), from) : from.replace(/^@\//, '');
  if (top === 'lib') return brokenByLib(folder, imported);
  if (top === 'app') return brokenByApp(folder, imported);
  if (top === 'content') return brokenByContent(imported);
  return undefined;
}

const walls = {
  create(context) {
    const file = relative(context.cwd, context.filename);
    const look = (node) => {
      const message = typeof node.source?.value === 'string' && broken(file, node.source.value);
      if (message) context.report({ node, message });
    };
    return {
      ImportDeclaration: look,
      ExportNamedDeclaration: look,
      ExportAllDeclaration: look,
      ImportExpression: look,
      TSImportType: look,
      NewExpression(node) {
        if (file.startsWith('lib/') && node.callee.name === 'Date' && node.arguments.length === 0)
          context.report({ node, message: 'lib has no clock: pass the time in.' });
      },
    };
  },
};

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

const house = { meta: { name: 'house' }, rules: { walls, docstrings } };

export default house;
