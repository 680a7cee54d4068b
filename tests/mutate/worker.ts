import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createVitest, type TestModule, type TestSpecification } from 'vitest/node';
import { repositoryRoot } from '../../app/commands/build-site';
import { mutated, type Mutant } from './mutants';

/*
 * A process that keeps Vitest warm and puts one mutant after another to the tests it is told. It is ended from outside
 * when a mutant makes it run for ever.
 */

export interface Trial {
  readonly mutant: Mutant | undefined;
  /** Parts of paths of tests, the quickest first; a later stage is asked only about what came through the ones before. */
  readonly stages: readonly (readonly string[])[];
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
    reporters: [{}],
    env: { SEED: process.env['SEED'] ?? '1' },
    testTimeout: 60_000,
    hookTimeout: 60_000,
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

const known = new Map<string, TestSpecification[]>();
async function specifications(stage: readonly string[]): Promise<TestSpecification[]> {
  const name = stage.join();
  const found = known.get(name) ?? (await vitest.globTestSpecifications([...stage]));
  const missing = stage.find((part) => !found.some(({ moduleId }) => moduleId.includes(part)));
  if (missing) throw new Error(`No test is named ${missing}.`);
  known.set(name, found);
  return found;
}

function firstErrors(children: TestModule['children']): string[] {
  return [...children.allTests('failed')].flatMap((test) => [test.fullName, test.result().errors?.[0]?.message ?? '']);
}

async function killed({ mutant, stages }: Trial): Promise<boolean> {
  current = mutant;
  if (mutant) vitest.invalidateFile(join(root, mutant.file));
  try {
    for (const stage of stages) {
      vitest.state.clearErrors();
      const { testModules, unhandledErrors } = await vitest.runTestSpecifications(await specifications(stage), false);
      const failed = testModules.filter((module) => !module.ok());
      if (unhandledErrors.length === 0 && failed.length === 0) continue;
      // Without a mutant none should fail: which does is said.
      if (!mutant) for (const { moduleId, children } of failed) console.error(moduleId, firstErrors(children));
      return true;
    }
    return false;
  } finally {
    if (mutant) vitest.invalidateFile(join(root, mutant.file));
    current = undefined;
  }
}

process.on('message', (trial: Trial) => {
  void killed(trial).then((dead) => process.send!({ dead }));
});
process.on('disconnect', () => process.exit());
process.send!({ ready: true });
