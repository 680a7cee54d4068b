/** How fast something counts up at each oxygen pressure: per minute, pressures in bar. */
export interface ExposureRate {
  at(pO2Bar: number): number;
  /** What counts up in some minutes while the pressure goes evenly from one value to another. */
  over(fromBar: number, toBar: number, minutes: number): number;
}

/** A stretch of oxygen pressure with one formula: the rate, and its integral over pressure from the stretch's start. */
export interface RatePiece {
  readonly fromBar: number;
  at(pO2Bar: number): number;
  integral(toBar: number): number;
}

/** Pressures closer than this are one: the rate between them is even for any purpose, and a quotient of tiny differences is not. */
export const SAME_PRESSURE_BAR = 1e-6;

/**
 * Joins pieces, lowest pressure first, each valid up to the next and the last without end; below the first the rate is 0.
 *
 * While the pressure changes evenly, time is proportional to it, so what counts up is (F(to) − F(from)) / (to − from)
 * minutes, F being the rate's integral over pressure. Every piece has F in closed form: a ramp taken in one step or in a
 * thousand gives the same.
 */
export function joinedRate(pieces: readonly RatePiece[]): ExposureRate {
  const startTotals: number[] = [0];
  for (let i = 1; i < pieces.length; i += 1) {
    startTotals.push(startTotals[i - 1]! + pieces[i - 1]!.integral(pieces[i]!.fromBar));
  }
  const indexAt = (bar: number) => pieces.findLastIndex(({ fromBar }) => bar >= fromBar);
  const at = (bar: number) => pieces[indexAt(bar)]?.at(bar) ?? 0;
  const total = (bar: number) => {
    const index = indexAt(bar);
    return index < 0 ? 0 : startTotals[index]! + pieces[index]!.integral(bar);
  };
  return {
    at,
    over(fromBar, toBar, minutes) {
      const riseBar = toBar - fromBar;
      if (Math.abs(riseBar) < SAME_PRESSURE_BAR) return at((fromBar + toBar) / 2) * minutes;
      return ((total(toBar) - total(fromBar)) / riseBar) * minutes;
    },
  };
}

/** A rate that changes evenly with pressure from a start value. */
export function straightPiece(fromBar: number, startPerMin: number, perMinPerBar: number): RatePiece {
  return {
    fromBar,
    at: (bar) => startPerMin + perMinPerBar * (bar - fromBar),
    integral: (bar) => startPerMin * (bar - fromBar) + (perMinPerBar * (bar - fromBar) ** 2) / 2,
  };
}

/** One whole in a limit of minutes that changes evenly with pressure: the rate is its reciprocal. */
export function limitPiece(fromBar: number, limitMin: number, toBar: number, toLimitMin: number): RatePiece {
  const slope = (toLimitMin - limitMin) / (toBar - fromBar);
  const limitAt = (bar: number) => limitMin + slope * (bar - fromBar);
  return {
    fromBar,
    at: (bar) => 1 / limitAt(bar),
    integral: (bar) => (slope === 0 ? (bar - fromBar) / limitMin : Math.log(limitAt(bar) / limitMin) / slope),
  };
}
