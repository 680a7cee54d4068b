import { LONGEST_S } from '../../dive/bounds';
import { dateSeconds } from '../csv/csv-time';
import type { Recording } from './record';

/**
 * Time at the surface before each recording, s, as far as the file tells; undefined where a person has to. The first
 * is 0. A dive the file calls the first of a series has the longest interval there is: nothing of note is left by then.
 */
export function surfaceIntervals(recordings: readonly Recording[]): (number | undefined)[] {
  return recordings.map((recording, i) => {
    if (i === 0) return 0;
    if (recording.intervalBeforeS !== undefined) return Math.min(LONGEST_S, recording.intervalBeforeS);
    const before = recordings[i - 1]!;
    const startS = between(before.clockS, recording.clockS) ?? between(startOf(before), startOf(recording));
    const interval = startS === undefined ? undefined : startS - lengthS(before);
    return interval === undefined || !(interval > 0) ? undefined : Math.min(LONGEST_S, interval);
  });
}

/** The latest time a recording reaches, s. */
export function lengthS({ timeS }: Recording): number {
  return timeS.reduce((most, time) => (time > most ? time : most), 0);
}

function startOf({ startedAt }: Recording): number | undefined {
  const seconds = startedAt === undefined ? NaN : dateSeconds(startedAt);
  return Number.isFinite(seconds) ? seconds : undefined;
}

function between(one: number | undefined, other: number | undefined): number | undefined {
  return one === undefined || other === undefined || other <= one ? undefined : other - one;
}
