/**
 * The walls of the house as lint rules. Inside lib arrows go down only: a folder may import its own floor
 * and the ones below. They read import paths as text, so they hold for files not written yet.
 */
const floors = [
  ['files', 'class', 'lesson', 'working', 'evidence', 'bench', 'curves', 'ways-out'],
  ['sayings'],
  ['rules', 'steer'],
  ['ascent', 'dive', 'exposure'],
  ['tissue'],
  ['physics'],
  ['quantity'],
];

/** The top floor's folders stand beside each other; on the ascent floor they lean on one another. */
const foldersAbove = (floor) => floors.slice(0, floor).flat();

const nodeBuiltIns =
  'assert|async_hooks|buffer|child_process|cluster|crypto|dgram|dns|events|fs|http|http2|https|module|net|os|path|perf_hooks|process|readline|stream|timers|tls|tty|url|util|v8|vm|worker_threads|zlib';

const onlyTests = { regex: '^@/tests(/|$)|^(\\.\\./)+tests/', message: 'Only tests import tests.' };

const outsideLib = [
  onlyTests,
  { regex: '^@/app(/|$)|^(\\.\\./)+app/', message: 'lib is the engine: it never imports the screen in app/.' },
  { regex: '^(react|react-dom|next)(/|$)', message: 'lib has no React: it must work in plain Node.' },
  { regex: '^d3(-|/|$)', message: 'lib draws nothing: keep d3 in app/.' },
  {
    regex: '^(zustand|idb|comlink|mrmime|@codemirror|@lezer)(/|$)',
    message: 'lib has no screen, storage or server: keep this in app/.',
  },
  { regex: `^node:|^(${nodeBuiltIns})(/|$)`, message: 'lib runs in a browser too: no Node built-ins.' },
];

/** A formula in MathML is part of a working: text made from text, with no screen in it. */
const typesetting = { regex: '^temml(/|$)', message: 'Formulas are set in lib/working and app/ alone.' };

/** Static and dynamic imports alike: the built-in rule sees only the first kind. */
const forbidImports = (patterns) => ({
  'no-restricted-imports': ['error', { patterns }],
  'no-restricted-syntax': [
    'error',
    ...patterns.map(({ regex, message }) => ({
      selector: `ImportExpression[source.value=/${regex.replaceAll('/', '\\x2F')}/]`,
      message,
    })),
    ...(patterns.some(({ regex }) => regex.includes('react')) ? clockSyntax : []),
  ],
});

const clockSyntax = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: 'lib has no clock: pass the time in.' },
];

const screenGlobals = [
  'window',
  'document',
  'navigator',
  'location',
  'history',
  'self',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'fetch',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'process',
  'Buffer',
  'console',
];

const libGlobals = {
  'no-restricted-globals': [
    'error',
    ...screenGlobals.map((name) => ({
      name,
      message: 'lib has no DOM, clock, storage or process: pass what it needs in.',
    })),
  ],
  'no-restricted-properties': [
    'error',
    { object: 'Date', property: 'now', message: 'lib has no clock: pass the time in.' },
    { object: 'Math', property: 'random', message: 'The same dive gives the same bits: pass a seeded source in.' },
  ],
};

const upward = (folders) => ({
  regex: `^(@/lib/|(\\.\\./)+(lib/)?)(${folders.join('|')})(/|$)`,
  message:
    'Inside lib arrows go down: files, lesson, working, evidence, bench, curves → sayings → rules → ascent, dive, exposure → tissue → physics → quantity.',
});

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

const inApp = (folders) => `^(\\.\\./)+(${folders.join('|')})(/|$)|^@/app/(${folders.join('|')})(/|$)`;

const wallsOfApp = [
  ...rooms.map((room) => ({
    files: [`app/${room}/**/*.{ts,tsx}`],
    rules: forbidImports([
      onlyTests,
      {
        regex: inApp(rooms.filter((other) => other !== room)),
        message: 'A room imports no other room: what both need stands in app/stage, app/pictures or app/parts.',
      },
    ]),
  })),
  ...Object.entries(floorsOfApp).map(([floor, below]) => ({
    files: [`app/${floor}/**/*.{ts,tsx}`],
    rules: forbidImports([
      onlyTests,
      {
        regex: inApp(
          [...rooms, ...Object.keys(floorsOfApp)].filter((other) => other !== floor && !below.includes(other)),
        ),
        message: `app/${floor} stands below the rooms: it imports ${below.map((one) => `app/${one}`).join(', ') || 'nothing of the app'}.`,
      },
    ]),
  })),
];

export const walls = [
  { files: ['lib/**/*.ts'], rules: { ...libGlobals, ...forbidImports([...outsideLib, typesetting]) } },
  ...floors.flatMap((folders, floor) => {
    const above = foldersAbove(floor);
    if (above.length === 0) return [];
    const files = folders.map((folder) => `lib/${folder}/**/*.ts`);
    return [{ files, rules: forbidImports([...outsideLib, typesetting, upward(above)]) }];
  }),
  { files: ['lib/working/**/*.ts'], rules: forbidImports(outsideLib) },
  {
    files: ['content/**/*.ts'],
    rules: forbidImports([
      {
        regex: '^(?!zod(/|$)|\\.|@/content(/|$)|@/lib(/|$))',
        message: 'content is data: it imports zod and types of lib, nothing else.',
      },
      { regex: '^(\\.\\./)+app/', message: 'Only app and tests import app/.' },
    ]),
  },
  { files: ['app/**/*.{ts,tsx}'], rules: forbidImports([onlyTests]) },
  ...wallsOfApp,
];
