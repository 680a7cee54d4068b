import { TestRunner, type RunnerTask as Task, type RunnerTestCase, type RunnerTestFile } from 'vitest';

/*
 * The ordinary test command has minutes, not an hour. What is told on the main paths is asked in every run; a walk over all
 * screens, windows and ways to fail takes turns: each run makes a part of it, by its seed, and the next one another. A file
 * that is run by itself is run whole, and so is everything in the long command.
 */

/** Only the test command itself takes turns, and says in how many runs all of them have been. */
const TURNS = Number(process.env['TURNS'] ?? 1);

const testsIn = (tasks: readonly Task[]): RunnerTestCase[] =>
  tasks.flatMap((task) => (task.type === 'suite' ? testsIn(task.tasks) : [task]));

/** The suites too, so that nothing is set up for tests that are not made. */
function skipEmpty(tasks: readonly Task[]): void {
  for (const task of tasks)
    if (task.type === 'suite') {
      skipEmpty(task.tasks);
      if (task.tasks.length > 0 && task.tasks.every(({ mode }) => mode === 'skip')) task.mode = 'skip';
    }
}

/** Begins each file's round somewhere else, or all the first tests of files would fall into one run. */
const startOf = (name: string): number => [...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0);

/** Skips what of a file has its turn in another run. */
export function giveTurns(file: RunnerTestFile, seed: number, turns: number): void {
  const first = seed + startOf(file.name);
  testsIn(file.tasks)
    .filter(({ tags = [] }) => tags.includes('in-turn') && !tags.includes('every-run'))
    .forEach((test, index) => {
      if ((first + index) % turns !== 0) test.mode = 'skip';
    });
  skipEmpty([file]);
}

export default class InTurns extends TestRunner {
  onCollected(files: RunnerTestFile[]): void {
    for (const file of files) giveTurns(file, Number(process.env['SEED'] ?? 0), TURNS);
  }
}
