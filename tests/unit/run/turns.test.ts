import { describe, expect, it, type RunnerTestFile } from 'vitest';
import { giveTurns } from '@/tests/run/turns';

/** A file as Vitest hands it over, of tests by their tags; the last two are in a suite of their own. */
function fileOf(name: string, tags: readonly string[][]): RunnerTestFile {
  const tests = tags.map((its) => ({ type: 'test', mode: 'run', tags: its }));
  const suite = { type: 'suite', mode: 'run', tasks: tests.slice(-2) };
  return { type: 'suite', mode: 'run', name, tasks: [...tests.slice(0, -2), suite] } as unknown as RunnerTestFile;
}

const testsOf = ({ tasks }: RunnerTestFile) => tasks.flatMap((task) => ('tasks' in task ? task.tasks : [task]));

const made = (file: RunnerTestFile): number[] =>
  testsOf(file).flatMap(({ mode }, index) => (mode === 'run' ? [index] : []));

const inTurn = ['in-turn'];

describe('tests that take turns', () => {
  it('have all been made once in as many runs as there are turns', () => {
    const runs = [0, 1, 2, 3].map((run) => {
      const file = fileOf('tests/a.test.ts', Array<string[]>(10).fill(inTurn));
      giveTurns(file, 1234 + run, 4);
      return made(file);
    });
    expect(runs.flat().sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('leave a main path, and what has no turns, in every run', () => {
    for (let seed = 0; seed < 4; seed += 1) {
      const file = fileOf('tests/b.test.ts', [['in-turn', 'every-run'], [], inTurn, inTurn, inTurn, inTurn]);
      giveTurns(file, seed, 4);
      expect(made(file)).toEqual([0, 1, expect.any(Number)]);
    }
  });

  it('set up no suite of which none has its turn', () => {
    const file = fileOf('tests/c.test.ts', [[], inTurn, inTurn]);
    giveTurns(file, 0, 1000);
    expect(file.tasks.map(({ mode }) => mode)).toEqual(['run', 'skip']);
  });

  it('are all made by whoever runs them without turns', () => {
    const file = fileOf('tests/d.test.ts', [inTurn, inTurn, inTurn]);
    giveTurns(file, 77, 1);
    expect(made(file)).toEqual([0, 1, 2]);
  });
});
