import { METRES_PER_FOOT } from '../../quantity/length';
import flying from '../../../content/published/flying.json';
import type { DiveSeen } from '../unit/unit';

/** Dives further apart than this are not counted as one series, h: our reading of "several days of diving". */
const SERIES_BREAK_H = 48;

/** Altitudes the published waits are about, m: cabins of 2,000 to 8,000 ft. */
export const GUIDELINE_FROM_M = 2000 * METRES_PER_FOOT;
export const GUIDELINE_TO_M = 8000 * METRES_PER_FOOT;

/** What the published guideline says of the dives done. */
export interface Guideline {
  /** Wait after surfacing, h. */
  readonly hours: number;
  /** Which of its cases this is, in its words. */
  readonly after: string;
  /** Where the guideline gives no figure, why this one stands in for it. */
  readonly standIn: string | null;
  readonly source: string;
}

type FlyingCase = 'single' | 'repetitive' | 'required stops';

/** Which case of the guideline the dives are, the latest last. */
function flyingCase(dives: readonly DiveSeen[]): FlyingCase {
  let series = 1;
  for (let i = dives.length - 1; i > 0; i -= 1) {
    const before = dives[i - 1]!.surfacedS;
    if (before === null || dives[i]!.startS - before > SERIES_BREAK_H * 3600) break;
    series += 1;
  }
  if (dives.slice(-series).some((dive) => dive.requiredStop)) return 'required stops';
  return series > 1 ? 'repetitive' : 'single';
}

/** The published wait before flying; `requiredStopsH` stands in where the guideline says only "substantially longer". */
export function flyingGuideline(dives: readonly DiveSeen[], requiredStopsH: number): Guideline | null {
  if (dives.length === 0) return null;
  const [single, repetitive, withStops] = flying.waits;
  const found = { single, repetitive, 'required stops': withStops }[flyingCase(dives)]!;
  return {
    hours: found.hours ?? requiredStopsH,
    after: found.after,
    standIn:
      found.hours === null
        ? `The guideline gives no figure: ${found.text}. ${requiredStopsH} h is a setting of this unit.`
        : null,
    source: flying.source,
  };
}
