import type { Step } from '@/lib/dive/dive';

interface Level {
  readonly toM: number;
  readonly rateMMin: number;
  readonly staysS: number;
}

/** The steps of a dive to one depth after another, up at the end, and of the rest after it. */
export function throughLevels(levels: readonly Level[], homeMMin: number, restS: number): Step[] {
  let depthM = 0;
  const moves = [...levels, { toM: 0, rateMMin: homeMMin, staysS: 0 }].flatMap(({ toM, rateMMin, staysS }): Step[] => {
    const kind = toM > depthM ? 'descend' : 'ascend';
    const move: Step[] = toM === depthM ? [] : [{ kind, toM, durationS: (Math.abs(toM - depthM) * 60) / rateMMin }];
    depthM = toM;
    return staysS > 0 ? [...move, { kind: 'stay', durationS: staysS }] : move;
  });
  return [...moves, { kind: 'interval', durationS: restS }];
}
