import { tidy } from '../../quantity/number';

/** Fastest change of depth a script may ask for, m/min: far beyond any dive, and still a dive. */
export const FASTEST_M_MIN = 200;

/** Time a change of depth takes at a rate, s. */
export function legDurationS(fromM: number, toM: number, rateMMin: number): number {
  return tidy((Math.abs(toM - fromM) * 60) / rateMMin);
}

/** The fewest whole seconds in which so much depth may be changed. */
export function leastLegS(fromM: number, toM: number): number {
  return Math.ceil((Math.abs(toM - fromM) * 60) / FASTEST_M_MIN);
}

/** Rate of a change of depth that takes so long, m/min, never negative. */
export function legRateMMin(fromM: number, toM: number, durationS: number): number {
  return (Math.abs(toM - fromM) * 60) / durationS;
}
