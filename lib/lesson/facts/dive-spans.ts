import type { Leg } from '../../dive/legs';
import type { NamedMoment } from '../expression/expression';

/** One dive of a script between leaving the surface and the next dive. Times since the script began, s. */
export interface DiveSpan {
  /** From 1. */
  readonly number: number;
  readonly startS: number;
  /** First at the greatest depth. */
  readonly arrivalS: number;
  /** The end of the last step that does not climb and ends near the greatest depth. */
  readonly leavingS: number;
  /** At the surface again; undefined where the script ends under water. */
  readonly surfacingS: number | undefined;
  /** When the next dive begins, or the script ends. */
  readonly nextS: number;
  readonly maxDepthM: number;
  /** Its legs, without the interval after it. */
  readonly legs: readonly Leg[];
}

/** A step that ends deeper than this share of the greatest depth still belongs to the bottom. */
const NEAR_GREATEST = 0.9;

/** The dives of a script by their legs; a script that never leaves the surface has none. */
export function diveSpans(legs: readonly Leg[]): DiveSpan[] {
  const lastS = legs.at(-1)?.endS ?? 0;
  const last = legs.at(-1)?.diveNumber ?? 0;
  const spans: DiveSpan[] = [];
  for (let index = 0; index <= last; index += 1) {
    const all = legs.filter(({ diveNumber, interval }) => diveNumber === index && !interval);
    const first = all.findIndex(({ fromM, toM }) => fromM > 0 || toM > 0);
    if (first < 0) continue;
    const own = all.slice(first);
    const maxDepthM = Math.max(...own.map(({ fromM, toM }) => Math.max(fromM, toM)));
    const bottom = own.findLast(({ fromM, toM }) => toM >= fromM && toM >= maxDepthM * NEAR_GREATEST);
    const surfaced = own.find(({ toM }, i) => toM === 0 && own.slice(i + 1).every((leg) => leg.toM === 0));
    spans.push({
      number: spans.length + 1,
      startS: own[0]!.startS,
      arrivalS: own.find(({ toM }) => toM === maxDepthM)!.endS,
      leavingS: bottom!.endS,
      surfacingS: surfaced?.endS,
      nextS: legs.find(({ diveNumber, interval }) => diveNumber > index && !interval)?.startS ?? lastS,
      maxDepthM,
      legs: own,
    });
  }
  return spans;
}

/** When a named moment of a dive is, s; undefined where it does not come about. */
export function namedMomentS(span: DiveSpan, name: NamedMoment, endS: number): number | undefined {
  return { start: span.startS, arrival: span.arrivalS, leaving: span.leavingS, surfacing: span.surfacingS, end: endS }[
    name
  ];
}
