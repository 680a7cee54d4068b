import { fork, type ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { repositoryRoot } from '../../app/commands/build-site';
import { seeded, shuffled } from '../../lib/quantity/seeded';
import { runSeed } from '../seed.mjs';
import { mutantsIn, told, type Mutant } from './mutants';
import type { Trial } from './worker';

/*
 * How many small mistakes the tests notice: `npm run mutate -- [FOLDER…] [--sample N]`. Draws so many mutants by chance
 * (`SEED`) evenly over the folders, puts each to the tests of its folder, and lists those that came through.
 */

/** The tests each folder answers to, in stages: its own first, then the published checks and the laws. */
const TESTS_OF: Readonly<Record<string, readonly (readonly string[])[]>> = {
  tissue: [['tests/unit/tissue/'], ['tests/published/'], ['tests/laws/engine.']],
  ascent: [
    ['tests/unit/ascent/'],
    ['tests/published/', 'tests/unit/rules/', 'tests/unit/working/'],
    ['tests/laws/engine.', 'tests/laws/schedule.', 'tests/laws/followed-plan.'],
  ],
  rules: [['tests/unit/rules/'], ['tests/laws/rules.', 'tests/laws/unit-working.', 'tests/unit/working/']],
  exposure: [['tests/unit/exposure/'], ['tests/published/', 'tests/unit/working/'], ['tests/laws/exposure.']],
  dive: [
    ['tests/unit/dive/'],
    ['tests/unit/files/', 'tests/laws/script.', 'tests/laws/setups.'],
    ['tests/laws/engine.', 'tests/laws/hostile/scripts.'],
  ],
  sayings: [
    ['tests/unit/sayings/'],
    [
      'tests/unit/commands/print-readings.',
      'tests/unit/commands/exposure-readings.',
      'tests/unit/class/dive-asks.',
      'tests/unit/desk/overlaid-dive.',
      'tests/unit/files/csv/',
      'tests/unit/lesson/expression/',
    ],
    ['tests/laws/sayings.'],
  ],
};

/** How long the tests of one mutant may take before it is said to run for ever, ms. */
const FOR_EVER_MS = 300_000;

const options = process.argv.slice(2);
const at = options.indexOf('--sample');
const sample = at < 0 ? 120 : Number(options[at + 1]);
const asked = options.filter((option, index) => option in TESTS_OF && index !== at + 1);
const folders = asked.length > 0 ? asked : Object.keys(TESTS_OF);

const textOf = (file: string): string => readFileSync(join(repositoryRoot, file), 'utf8');

function mutantsOf(folder: string): Mutant[] {
  return readdirSync(join(repositoryRoot, 'lib', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => `lib/${folder}/${name}`)
    .flatMap((file) => mutantsIn(file, textOf(file), folder === 'sayings'));
}

const chance = seeded(runSeed);
const all = folders.map((folder) => ({ folder, mutants: mutantsOf(folder) }));
const drawn: Trial[] = shuffled(
  all.flatMap(({ folder, mutants }) =>
    shuffled(mutants, chance)
      .slice(0, Math.ceil(sample / folders.length))
      .map((mutant) => ({ mutant, stages: TESTS_OF[folder]! })),
  ),
  chance,
);

console.log(
  `${drawn.length} of ${all.reduce((sum, { mutants }) => sum + mutants.length, 0)} mutants in ${folders.map((name) => `lib/${name}`).join(', ')} (SEED=${runSeed})`,
);

function newWorker(): Promise<ChildProcess> {
  const worker = fork(join(repositoryRoot, 'tests/mutate/worker.ts'), [], {
    cwd: repositoryRoot,
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, SEED: String(runSeed) },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  return new Promise((resolve, reject) => {
    worker.once('message', () => resolve(worker));
    worker.once('exit', (code) => reject(new Error(`a worker ended with ${code} before it began`)));
  });
}

/** What became of a mutant; one that ends its worker, or never ends, has been noticed. */
function tried(worker: ChildProcess, trial: Trial): Promise<'killed' | 'survived' | 'ran for ever'> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => worker.kill('SIGKILL'), FOR_EVER_MS);
    const onExit = () => (clearTimeout(timer), resolve('ran for ever'));
    worker.once('exit', onExit);
    worker.once('message', ({ dead }: { dead: boolean }) => {
      clearTimeout(timer);
      worker.off('exit', onExit);
      resolve(dead ? 'killed' : 'survived');
    });
    worker.send(trial);
  });
}

const survivors: Mutant[] = [];
let done = 0;
let noticed = 0;

async function lane(): Promise<void> {
  let worker = await newWorker();
  for (let trial = drawn.pop(); trial !== undefined; trial = drawn.pop()) {
    const outcome = await tried(worker, trial);
    done += 1;
    if (outcome === 'survived') survivors.push(trial.mutant!);
    else noticed += 1;
    console.log(`${done} · ${outcome} · ${told(textOf(trial.mutant!.file), trial.mutant!)}`);
    if (outcome === 'ran for ever') worker = await newWorker();
  }
  worker.disconnect();
}

// Tests that fail without a mistake would notice every one.
const first = await newWorker();
const sound = { mutant: undefined, stages: folders.flatMap((folder) => TESTS_OF[folder]!) };
if ((await tried(first, sound)) !== 'survived') throw new Error('The tests fail as they stand. Mend that first.');
first.disconnect();
await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, lane));

console.log(`\n${noticed} of ${done} mutants noticed: ${((100 * noticed) / done).toFixed(1)} %`);
for (const survivor of survivors) console.log(`survived: ${told(textOf(survivor.file), survivor)}`);
process.exitCode = noticed / done >= 0.9 ? 0 : 1;
