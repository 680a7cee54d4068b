import { availableParallelism } from 'node:os';
import { runStep, type Counts, type Step } from './run/step';
import { runSeed } from './seed.mjs';

/*
 * The whole test command. As many steps run beside each other as there are cores; the browser begins as soon as the site is
 * built, since its workers wait for pages about a third of their time. Main paths are in every run; walks over all there is
 * take turns (`tests/run/turns.ts`). `--long` makes all of them, draws ten times as much in every law and pokes at the
 * screens for minutes instead of seconds. Names of steps after the command run those alone: `npm test -- lint types`.
 */

/** In so many runs of the ordinary command each test that takes turns is made once. */
const TURNS = 6;

const long = process.argv.includes('--long');
const cores = Math.max(2, availableParallelism());

const vitest = (config: string, ...options: string[]): string[] => [
  'node_modules/vitest/vitest.mjs',
  'run',
  '--config',
  config,
  '--reporter=tests/run/reporter.ts',
  ...options,
];

const tests = (...options: string[]): string[] =>
  vitest('tests/vitest.config.ts', `--maxWorkers=${Math.max(1, cores - 2)}`, ...options);

/** Longest first: what is short fills the gaps. */
const allSteps: readonly Step[] = [
  {
    // In one process, since all of them lean on the same modules.
    name: 'Unit tests, laws and published checks',
    commands: [tests('--project=library')],
    counts: true,
  },
  { name: 'Build', commands: [['--import', 'tsx', 'app/commands/build.ts']] },
  {
    name: 'Browser',
    commands: [vitest('tests/vitest.browser.config.ts', `--maxWorkers=${cores}`)],
    counts: true,
    after: ['Build'],
  },
  { name: 'Screens', commands: [tests('--project=screens', '--project=screens apart')], counts: true },
  {
    name: 'Lint',
    commands: [
      [
        'node_modules/oxlint/bin/oxlint',
        '--config=tests/oxlint.json',
        '--deny-warnings',
        '--report-unused-disable-directives',
        ...['app', 'lib', 'tests', 'content'],
      ],
      ['node_modules/knip/bin/knip.js', '--config', 'tests/knip.json'],
      ['--import', 'tsx', 'tests/run/long-files.ts'],
      [
        'node_modules/oxfmt/bin/oxfmt',
        '--config=tests/oxfmt.config.mjs',
        '--ignore-path=tests/format-ignore.txt',
        '--check',
      ],
    ],
  },
  {
    name: 'Types',
    commands: [
      ['node_modules/next/dist/bin/next', 'typegen'],
      ['node_modules/typescript-native/bin/tsc', '--noEmit'],
    ],
    // A build writes the same types of routes.
    after: ['Build'],
  },
];

const asked = process.argv.slice(2).filter((argument) => !argument.startsWith('-'));
const steps = allSteps
  .filter(({ name }) => asked.length === 0 || asked.some((one) => name.toLowerCase().startsWith(one.toLowerCase())))
  .map((step, _, chosen) => ({
    ...step,
    after: (step.after ?? []).filter((name) => chosen.some((one) => one.name === name)),
  }));
const beganMs = Date.now();
const clock = (): string => {
  const seconds = Math.round((Date.now() - beganMs) / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
};
const say = (text: string): void => console.log(`[${clock()}] ${text}`);

const waiting = [...steps];
const running = new Map<string, { counts: Counts | undefined }>();
const passedSteps = new Set<string>();
const failedSteps = new Set<string>();
const total = { passed: 0, failed: 0, waiting: 0 };

const told = (counts: Counts | undefined): string =>
  counts === undefined
    ? ''
    : `: ${counts.passed} passed, ${counts.failed} failed, ${counts.files} of ${counts.ofFiles} files`;

async function run(step: (typeof steps)[number]): Promise<void> {
  const state: { counts: Counts | undefined } = { counts: undefined };
  running.set(step.name, state);
  say(`${step.name} …`);
  const stepBeganMs = Date.now();
  const { ok, counts } = await runStep(
    step,
    { NEXT_TELEMETRY_DISABLED: '1', SEED: String(runSeed), ...(long ? { LONG: '1' } : { TURNS: String(TURNS) }) },
    (line) => console.log(`[${clock()}] ${step.name} │ ${line}`),
    (now) => void (state.counts = now),
  );
  running.delete(step.name);
  (ok ? passedSteps : failedSteps).add(step.name);
  total.passed += counts.passed;
  total.waiting += counts.waiting;
  // A step that fails without a failed test to show for it (types, lint, build, a crash) counts as one.
  total.failed += ok ? 0 : Math.max(1, counts.failed);
  const seconds = Math.round((Date.now() - stepBeganMs) / 1000);
  say(`${step.name} ${ok ? 'passed' : 'FAILED'} in ${seconds} s${told(step.counts ? counts : undefined)}`);
}

/** The next step that may begin now. */
function next(): (typeof steps)[number] | undefined {
  if (running.size >= cores) return undefined;
  return waiting.find(({ after }) => after.every((name) => passedSteps.has(name)));
}

async function runAll(): Promise<void> {
  const ends = new Set<Promise<void>>();
  for (;;) {
    for (let step = next(); step !== undefined; step = next()) {
      waiting.splice(waiting.indexOf(step), 1);
      const end: Promise<void> = run(step).finally(() => ends.delete(end));
      ends.add(end);
    }
    if (ends.size === 0) break;
    await Promise.race(ends);
  }
  for (const { name, after } of waiting)
    say(`${name} not run: ${after.filter((one) => failedSteps.has(one)).join(', ')} failed`);
}

say(`Chance comes from SEED=${runSeed}`);
const ticking = setInterval(() => {
  for (const [name, { counts }] of running) say(`${name} …${told(counts)}`);
}, 20_000);
await runAll();
clearInterval(ticking);
say(failedSteps.size === 0 ? 'Everything passed' : `FAILED: ${[...failedSteps].join('; ')} (SEED=${runSeed})`);
if (total.waiting > 0)
  console.log(`${total.waiting} have their turn in another run; npm run test:long makes all of them.`);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;
