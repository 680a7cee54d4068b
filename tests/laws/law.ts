import fc from 'fast-check';
import { expect } from 'vitest';
import onceFailed from './once-failed.json';

/*
 * Laws hold for whatever is drawn. What is drawn is new in every run of the tests; what once broke a law is drawn again in
 * each (`once-failed.json`).
 */

/** Where the chance of this run begins. */
export const SEED = Number(process.env['SEED'] ?? 1);

/** Whether there is time for all a law asks for, and more. */
export const LONG = process.env['LONG'] !== undefined;

/** Whether a law is asked of one mistake after another: it is noticed in the first few draws, or hardly ever. */
const BRIEF = process.env['BRIEF'] !== undefined;

/** So few are drawn in every run. */
const FEWEST = 12;

/**
 * How many are drawn of those a law asks for: a third in an ordinary run, since the next one draws others, and ten times all
 * of them where there is time.
 */
const drawsOf = (asked: number): number =>
  LONG ? asked * 10 : Math.max(Math.min(asked, FEWEST), BRIEF ? 0 : Math.round(asked / 3));

/** How long a failure is made smaller, ms. */
const SHRINKING_MS = 5000;

/** A draw that once broke the law which is tested under this name. */
interface OnceFailed {
  readonly law: string;
  readonly seed: number;
  readonly path?: string;
  readonly why: string;
}

/** Throws, with what it takes to have it again, where what is drawn so many times breaks the property. */
export function law<Drawn>(property: fc.IAsyncProperty<Drawn>, draws?: number): Promise<void>;
export function law<Drawn>(property: fc.IProperty<Drawn>, draws?: number): void;
export function law<Drawn>(
  property: fc.IAsyncProperty<Drawn> | fc.IProperty<Drawn>,
  draws = 100,
): Promise<void> | void {
  const name = expect.getState().currentTestName ?? '';
  const turns: fc.Parameters<Drawn>[] = [
    ...(onceFailed as readonly OnceFailed[])
      .filter((one) => one.law === name)
      // A path leads to the one draw that failed.
      .map(({ seed, path }) => ({ seed, ...(path === undefined ? { numRuns: draws } : { path, numRuns: 1 }) })),
    { seed: SEED, numRuns: drawsOf(draws) },
  ];
  if (property.isAsync()) return turns.reduce((before, turn) => before.then(() => later(property, name, turn)), done);
  for (const turn of turns) atOnce(property as fc.IProperty<Drawn>, name, turn);
}

const done = Promise.resolve();

function atOnce<Drawn>(property: fc.IProperty<Drawn>, name: string, turn: fc.Parameters<Drawn>): void {
  const found = fc.check(property, { ...turn, endOnFailure: true });
  if (found.failed) fail(name, found, fc.check(property, shrinking(turn, found)));
}

async function later<Drawn>(
  property: fc.IAsyncProperty<Drawn> | fc.IProperty<Drawn>,
  name: string,
  turn: fc.Parameters<Drawn>,
): Promise<void> {
  const found = await fc.check(property as fc.IAsyncProperty<Drawn>, { ...turn, endOnFailure: true });
  if (found.failed) fail(name, found, await fc.check(property as fc.IAsyncProperty<Drawn>, shrinking(turn, found)));
}

/** The same failure once more, and then ever smaller ones for as long as that may take. */
function shrinking<Drawn>(turn: fc.Parameters<Drawn>, { counterexamplePath }: fc.RunDetails<Drawn>) {
  return {
    ...turn,
    ...(counterexamplePath !== null && { path: counterexamplePath }),
    interruptAfterTimeLimit: SHRINKING_MS,
  } satisfies fc.Parameters<Drawn>;
}

function fail<Drawn>(name: string, found: fc.RunDetails<Drawn>, smaller: fc.RunDetails<Drawn>): never {
  const told = smaller.failed && smaller.counterexample !== null ? smaller : found;
  const kept = JSON.stringify({ law: name, seed: found.seed, path: found.counterexamplePath, why: '…' });
  throw new Error(
    `${fc.defaultReportMessage(told)}\n\nRun it again with SEED=${found.seed}. So that it is never lost, add this to tests/laws/once-failed.json:\n${kept}`,
    { cause: told.errorInstance },
  );
}
