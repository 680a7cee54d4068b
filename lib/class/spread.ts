import * as z from 'zod';
import { quantile } from '../quantity/quantile';
import { sketchAt, type Sketch } from '../lesson/questions/sketch';
import type { ClassAnswer } from './answer';
import type { Ask, AskOf } from './ask';
import type { Asked } from './class-state';

/*
 * How the answers of a class lie: nothing in it says whose an answer is.
 */

const count = z.number().int().min(0).max(10_000);
const amount = z.number().min(-1e6).max(1e6);

export const spreadSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('choice'), counts: z.array(count).max(8) }),
  /** In rising order. */
  z.strictObject({ by: z.literal('number'), values: z.array(amount).max(1000) }),
  /** Quartiles of the curves at moments along the axis. */
  z.strictObject({
    by: z.literal('draw'),
    curves: count,
    columns: z.array(z.tuple([amount, amount, amount, amount])).max(60),
  }),
  /** By compartment, the first first. */
  z.strictObject({ by: z.literal('leader'), counts: z.array(count).length(16) }),
]);
export type Spread = z.infer<typeof spreadSchema>;
export type SpreadOf<By extends Spread['by']> = Extract<Spread, { by: By }>;

/** Moments at which curves are laid over one another. */
const COLUMNS = 41;

/** The answers to one round, in an order that says nothing of who gave them. */
export function answersOf({ rounds }: Pick<Asked, 'rounds'>, round: number): ClassAnswer[] {
  return Object.values(rounds[round]?.answers ?? {}).map(({ answer }) => answer);
}

/** How many have answered a round. */
export function answeredCount({ rounds }: Pick<Asked, 'rounds'>, round: number): number {
  return Object.keys(rounds[round]?.answers ?? {}).length;
}

/** Fewer answers than that are easily told apart by who looked at their phone. */
export const FEWEST_SHOWN = 3;

/** Whether a round of a question has so few answers that showing them tells whose they are. */
export function giveAway({ rounds }: Pick<Asked, 'rounds'>): boolean {
  return rounds.some((_, round) => {
    const count = answeredCount({ rounds }, round);
    return count > 0 && count < FEWEST_SHOWN;
  });
}

/** How the answers to a question lie. */
export function spreadOf(ask: Ask, answers: readonly ClassAnswer[]): Spread {
  switch (ask.by) {
    case 'choice': {
      const counts = ask.options.map(() => 0);
      for (const one of answers)
        if (one.by === 'choice' && one.option < counts.length) counts[one.option] = counts[one.option]! + 1;
      return { by: 'choice', counts };
    }
    case 'number':
      return {
        by: 'number',
        values: answers.flatMap((one) => (one.by === 'number' ? [one.value] : [])).sort((one, other) => one - other),
      };
    case 'leader': {
      const counts = Array.from({ length: 16 }, () => 0);
      for (const one of answers)
        if (one.by === 'leader') counts[one.compartment - 1] = counts[one.compartment - 1]! + 1;
      return { by: 'leader', counts };
    }
    case 'draw':
      return { by: 'draw', ...spreadOfCurves(ask.axes, sketchesOf(answers)) };
  }
}

/** The curves among answers. */
export function sketchesOf(answers: readonly ClassAnswer[]): Sketch[] {
  return answers.flatMap((one) => (one.by === 'draw' ? [one.sketch] : []));
}

/** At each column of an axis from one moment to another, s, its time and the three quartiles of the curves there. */
export function spreadOfCurves(
  { fromS, toS }: Pick<AskOf<'draw'>['axes'], 'fromS' | 'toS'>,
  sketches: readonly Sketch[],
): Pick<SpreadOf<'draw'>, 'curves' | 'columns'> {
  if (sketches.length === 0) return { curves: 0, columns: [] };
  const columns = Array.from({ length: COLUMNS }, (_, i): [number, number, number, number] => {
    const timeS = fromS + ((toS - fromS) * i) / (COLUMNS - 1);
    const values = sketches.map((sketch) => sketchAt(sketch, timeS)).sort((one, other) => one - other);
    return [timeS, quantile(values, 0.25), quantile(values, 0.5), quantile(values, 0.75)];
  });
  return { curves: sketches.length, columns };
}
