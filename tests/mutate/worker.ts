import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { BaseSequencer, createVitest, type TestModule, type TestSpecification } from 'vitest/node';
import { repositoryRoot } from '../../app/commands/site/build-site';
import { TURN_TAGS } from '../run/turn-tags.mjs';
import { mutated, type Mutant } from './mutants';

/*
 * A process that keeps Vitest warm and puts one mutant after another to the tests it is told. It is ended from outside
 * when a mutant makes it run for ever.
 */

export interface Trial {
  /** Undefined: the tests as they stand, of which none should fail. */
  readonly mutant: Mutant | undefined;
  /**
   * Parts of paths of tests, after a `!` of those left out, the quickest first; a later stage is asked only about what came
   * through the ones before.
   */
  readonly stages: readonly (readonly string[])[];
  /** Work after which a mutant is said to run for ever, s of the processor: on a busy machine a clock would say it too soon. */
  readonly mostS: number;
}

export interface Outcome {
  readonly became: 'noticed' | 'survived' | 'ran for ever';
  /** The first test that noticed. */
  readonly by: string;
  /** What the tests took, s of the processor. */
  readonly tookS: number;
}

/** Runs the files of tests in the order they are asked for in. */
class AsGiven extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve(files);
  }
}

const root = repositoryRoot.replace(/\/$/, '');
let current: Mutant | undefined;

const vitest = await createVitest(
  'test',
  {
    config: false,
    root,
    watch: false,
    include: ['tests/{unit,published,laws}/**/*.test.ts'],
    exclude: ['tests/unit/walls.test.ts', 'tests/laws/law.test.ts'],
    pool: 'threads',
    isolate: false,
    maxWorkers: 1,
    bail: 1,
    tags: TURN_TAGS,
    reporters: [{}],
    sequence: { sequencer: AsGiven },
    env: { SEED: process.env['SEED'] ?? '1', BRIEF: '1' },
    // The work done is what counts, not the clock.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
  },
  {
    cacheDir: 'node_modules/.vite',
    resolve: { alias: { '@': root } },
    plugins: [
      {
        name: 'mutant',
        enforce: 'pre',
        load(id) {
          return current !== undefined && id === join(root, current.file)
            ? mutated(readFileSync(id, 'utf8'), current)
            : null;
        },
      },
    ],
  },
);

/** How many mutants each file of tests was the first to notice. */
const noticedBy = new Map<string, number>();

const known = new Map<string, TestSpecification[]>();
async function specifications(stage: readonly string[]): Promise<TestSpecification[]> {
  const name = stage.join();
  const asked = stage.filter((part) => !part.startsWith('!'));
  const leftOut = stage.filter((part) => part.startsWith('!')).map((part) => part.slice(1));
  const found =
    known.get(name) ??
    (await vitest.globTestSpecifications(asked)).filter(
      ({ moduleId }) => !leftOut.some((part) => moduleId.includes(part)),
    );
  const missing = asked.find((part) => !found.some(({ moduleId }) => moduleId.includes(part)));
  if (missing) throw new Error(`No test is named ${missing}.`);
  known.set(name, found);
  // The first that notices ends it: most likely the file named after the mistaken one, else the one that noticed most so far.
  const subject = current ? basename(current.file, '.ts') : '';
  const promise = ({ moduleId }: TestSpecification) =>
    (moduleId.includes(subject) ? 1e6 : 0) + (noticedBy.get(moduleId) ?? 0);
  return found.toSorted((one, other) => promise(other) - promise(one));
}

/** What waited too long on a busy machine says nothing of the mutant. */
const isLate = (message: string): boolean => /timed out in|Timeout (starting|waiting)/.test(message);

function failuresIn(module: TestModule): { name: string; message: string }[] {
  return [
    ...module.errors().map(({ message }) => ({ name: 'as it is read', message })),
    ...[...module.children.allTests('failed')].map((test) => ({
      name: test.fullName,
      message: test.result().errors?.[0]?.message ?? '',
    })),
    ...[...module.children.allSuites()].flatMap((suite) =>
      suite.errors().map(({ message }) => ({ name: suite.fullName, message })),
    ),
  ];
}

/** The first test of a stage that fails, or undefined. */
async function failureIn(stage: readonly string[], sound: boolean): Promise<string | undefined> {
  for (;;) {
    // Vitest remembers what failed in files that are not run this time, which would be held against this mutant.
    vitest.state.clearErrors();
    vitest.state.filesMap.clear();
    vitest.state.idMap.clear();
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(await specifications(stage), false);
    const failures = [
      ...testModules.flatMap((module) =>
        failuresIn(module).map((failure) => ({ file: module.moduleId.slice(root.length + 1), ...failure })),
      ),
      ...unhandledErrors.map((error) => ({ file: 'outside a test', name: '', message: (error as Error).message })),
    ];
    const failure = failures.find(({ message }) => !isLate(message));
    if (sound && failure) console.error(failure.file, failure.name, failure.message);
    if (failure) {
      noticedBy.set(join(root, failure.file), (noticedBy.get(join(root, failure.file)) ?? 0) + 1);
      return `${failure.file} ${failure.name}`;
    }
    if (failures.length === 0) {
      if (testModules.every((module) => module.ok())) return undefined;
      return 'a file that ended without a word';
    }
  }
}

const workS = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

async function tried({ mutant, stages, mostS }: Trial): Promise<void> {
  const beganS = workS();
  const tell = (became: Outcome['became'], by = '') =>
    process.send!({ became, by, tookS: workS() - beganS } satisfies Outcome);
  // The tests are in a thread of their own, so that this one can see them run on.
  const watch = setInterval(() => {
    if (workS() - beganS < mostS) return;
    clearInterval(watch);
    tell('ran for ever');
  }, 1000);
  current = mutant;
  if (mutant) vitest.invalidateFile(join(root, mutant.file));
  let by: string | undefined;
  for (const stage of stages) {
    by = await failureIn(stage, mutant === undefined);
    if (by !== undefined) break;
  }
  clearInterval(watch);
  if (mutant) vitest.invalidateFile(join(root, mutant.file));
  current = undefined;
  tell(by === undefined ? 'survived' : 'noticed', by);
}

process.on('message', (trial: Trial) => void tried(trial));
process.on('disconnect', () => process.exit());
process.send!({ ready: true });
