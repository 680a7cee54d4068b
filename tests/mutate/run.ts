import { fork, type ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { repositoryRoot } from '../../app/commands/site/build-site';
import { seeded, shuffled } from '../../lib/quantity/seeded';
import { runSeed } from '../seed.mjs';
import { lineOf, mutantsIn, told, type Mutant } from './mutants';
import type { Outcome, Trial } from './worker';

/*
 * How many small mistakes the tests notice: `npm run mutate -- [FOLDER[/FILE[:LINE]]…] [--sample N] [--minutes M]
 * [--own] [--workers W]`. Draws so many mutants by chance (`SEED`) evenly over the folders, puts each to the tests of its folder (`--own`:
 * to those beside it alone), and lists those that came through. After `M` minutes it begins no other: they are tried in an
 * order drawn by chance, so that those it came to are a fair sample too.
 */

/** The tests each folder answers to, in stages: its own first, then the published checks and the laws. */
const TESTS_OF: Readonly<Record<string, readonly (readonly string[])[]>> = {
  tissue: [['tests/unit/tissue/'], ['tests/published/checks.'], ['tests/laws/engine/']],
  ascent: [
    ['tests/unit/ascent/'],
    ['tests/published/checks.', 'tests/unit/rules/', '!lessons-changed', 'tests/unit/working/'],
    ['tests/laws/engine/', 'tests/laws/schedule.', 'tests/laws/followed-plan.', 'tests/laws/stop-changes.'],
  ],
  rules: [
    ['tests/unit/rules/', '!lessons-changed'],
    ['tests/laws/rules.', 'tests/laws/unit-working.', 'tests/unit/working/'],
    ['tests/unit/rules/lessons-changed.'],
  ],
  exposure: [['tests/unit/exposure/'], ['tests/published/checks.', 'tests/unit/working/'], ['tests/laws/exposure/']],
  dive: [
    ['tests/unit/dive/'],
    ['tests/unit/files/', 'tests/laws/script.', 'tests/laws/setups.', 'tests/laws/steer.'],
    ['tests/laws/engine/', 'tests/laws/hostile/scripts.', 'tests/laws/hostile/absurd-scripts.'],
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

/** A mutant runs for ever where its tests take so many times what they take without one, and so much more, s. */
const FOR_EVER = { times: 3, s: 60 };

const options = process.argv.slice(2);
const numberAfter = (name: string, otherwise: number): number =>
  options.includes(name) ? Number(options[options.indexOf(name) + 1]) : otherwise;
const sample = numberAfter('--sample', 120);
const mostMs = numberAfter('--minutes', Infinity) * 60_000;
const workerCount = numberAfter('--workers', Math.min(2, availableParallelism()));
const ownOnly = options.includes('--own');
const asked = options.filter((option) => option.split('/')[0]! in TESTS_OF);
const folders = Object.keys(TESTS_OF).filter(
  (folder) => asked.length === 0 || asked.some((option) => option.split('/')[0] === folder),
);
const isAsked = (file: string, line: number): boolean =>
  asked.length === 0 ||
  asked.some((option) => {
    const [path, onLine] = option.split(':');
    return file.startsWith(`lib/${path}`) && (onLine === undefined || Number(onLine) === line);
  });
const stagesOf = (folder: string) => (ownOnly ? TESTS_OF[folder]!.slice(0, 1) : TESTS_OF[folder]!);

const textOf = (file: string): string => readFileSync(join(repositoryRoot, file), 'utf8');

function mutantsOf(folder: string): Mutant[] {
  return readdirSync(join(repositoryRoot, 'lib', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => `lib/${folder}/${name}`)
    .flatMap((file) => {
      const text = textOf(file);
      return mutantsIn(file, text, folder === 'sayings').filter((mutant) => isAsked(file, lineOf(text, mutant)));
    });
}

interface Drawn {
  readonly folder: string;
  readonly mutant: Mutant;
}

const chance = seeded(runSeed);
const all = folders.map((folder) => ({ folder, mutants: mutantsOf(folder) }));
const drawn: Drawn[] = shuffled(
  all.flatMap(({ folder, mutants }) =>
    shuffled(mutants, chance)
      .slice(0, Math.ceil(sample / folders.length))
      .map((mutant) => ({ folder, mutant })),
  ),
  chance,
);

console.log(
  `${drawn.length} of ${all.reduce((sum, { mutants }) => sum + mutants.length, 0)} mutants in ${folders.map((name) => `lib/${name}`).join(', ')} (SEED=${runSeed})`,
);

function newWorker(): Promise<ChildProcess> {
  const worker = fork(join(repositoryRoot, 'tests/mutate/worker.ts'), [], {
    cwd: repositoryRoot,
    execArgv: ['--import', 'tsx', '--max-old-space-size=2000'],
    env: { ...process.env, SEED: String(runSeed) },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    serialization: 'advanced',
  });
  return new Promise((resolve, reject) => {
    worker.once('message', () => resolve(worker));
    worker.once('exit', (code) => reject(new Error(`a worker ended with ${code} before it began`)));
  });
}

/** What became of a mutant; one that ends its worker, or never ends, has been noticed. */
function tried(worker: ChildProcess, trial: Trial): Promise<Outcome> {
  return new Promise((resolve) => {
    const onExit = () => resolve({ became: 'ran for ever', by: 'it ended its process', tookS: 0 });
    worker.once('exit', onExit);
    worker.once('message', (outcome: Outcome) => {
      worker.off('exit', onExit);
      resolve(outcome);
    });
    worker.send(trial);
  });
}

const workers = await Promise.all(Array.from({ length: workerCount }, newWorker));

/** Puts each to the tests by whichever worker is free, and hands over what became of it. */
async function putEach<Item>(
  items: Item[],
  trialOf: (item: Item) => Trial,
  note: (item: Item, outcome: Outcome) => void,
): Promise<void> {
  const lane = async (which: number): Promise<void> => {
    for (let item = items.shift(); item !== undefined; item = items.shift()) {
      const outcome = await tried(workers[which]!, trialOf(item));
      note(item, outcome);
      if (outcome.became !== 'ran for ever') continue;
      workers[which]!.kill('SIGKILL');
      workers[which] = await newWorker();
    }
  };
  await Promise.all(workers.map((_, which) => lane(which)));
}

const beganMs = performance.now();
let workS = 0;

// Tests that fail without a mistake would notice every one.
const soundS = new Map<string, number>();
await putEach(
  [...folders],
  (folder) => ({ mutant: undefined, stages: stagesOf(folder), mostS: Infinity }),
  (folder, { became, by, tookS }) => {
    if (became !== 'survived') throw new Error(`The tests fail as they stand: ${by}. Mend that first.`);
    soundS.set(folder, tookS);
    workS += tookS;
    console.log(`the tests of lib/${folder} take ${tookS.toFixed(0)} s of the processor`);
  },
);

const survivors: Drawn[] = [];
const done: Drawn[] = [];
const left = [...drawn];
await putEach(
  left,
  ({ folder, mutant }) => ({
    mutant,
    stages: stagesOf(folder),
    mostS: FOR_EVER.times * soundS.get(folder)! + FOR_EVER.s,
  }),
  (one, { became, by, tookS }) => {
    done.push(one);
    workS += tookS;
    if (performance.now() - beganMs > mostMs) left.length = 0;
    if (became === 'survived') survivors.push(one);
    console.log(
      `${done.length} · ${became} · ${told(textOf(one.mutant.file), one.mutant)} · ${tookS.toFixed(1)} s · ${by}`,
    );
  },
);
for (const worker of workers) worker.disconnect();

const score = (of: readonly Drawn[]): string => {
  const missed = of.filter((one) => survivors.includes(one)).length;
  return `${of.length - missed} of ${of.length} mutants noticed: ${((100 * (of.length - missed)) / of.length).toFixed(1)}%`;
};
console.log();
for (const folder of folders) console.log(`lib/${folder}: ${score(done.filter((one) => one.folder === folder))}`);
const clockMin = (performance.now() - beganMs) / 60_000;
console.log(
  `${score(done)} (SEED=${runSeed}); ${clockMin.toFixed(0)} min by the clock, ${(workS / 60).toFixed(0)} min of the processor`,
);
for (const { mutant } of survivors) console.log(`survived: ${told(textOf(mutant.file), mutant)}`);
process.exitCode = survivors.length <= 0.1 * done.length ? 0 : 1;
