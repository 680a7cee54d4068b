import { LONGEST_S } from '../../dive/bounds';
import { readMoment, secondsBetween } from '../csv/csv-time';
import { printHours } from '../../quantity/duration';
import type { Recording } from './record';

/**
 * After so long at the surface a dive begins from rest, s: of what the slowest compartment (635 min for nitrogen) had
 * taken up beyond rest, 2^(−72·60/635), less than 1%, is left.
 */
export const FROM_REST_S = 3 * 24 * 3600;

/**
 * Time at the surface before each recording, s, as far as the file tells; undefined where a person has to. The first
 * is 0, and one that a file calls without end is Infinity.
 */
export function surfaceIntervals(recordings: readonly Recording[]): (number | undefined)[] {
  return recordings.map((recording, i) => {
    if (i === 0) return 0;
    if (recording.intervalBeforeS !== undefined) return recording.intervalBeforeS;
    const startS = startsApartS(recordings[i - 1]!, recording);
    const interval = startS === undefined ? undefined : startS - lengthS(recordings[i - 1]!);
    return interval === undefined || !(interval > 0) ? undefined : interval;
  });
}

/** Where what a file says of a surface interval and the times it gives for its dives are at odds: a sentence each. */
export function intervalsAtOdds(recordings: readonly Recording[]): string[] {
  return recordings.flatMap((recording, i) => {
    const said = recording.intervalBeforeS;
    const apart = i === 0 ? undefined : startsApartS(recordings[i - 1]!, recording);
    if (said === undefined || said === Infinity || apart === undefined) return [];
    const byTimes = apart - lengthS(recordings[i - 1]!);
    return Math.abs(byTimes - said) <= AT_ODDS_S
      ? []
      : [
          `The file says ${printHours(said)} at the surface before “${recording.name}”, and the times of its dives say ${byTimes > 0 ? printHours(byTimes) : 'none'}: ${printHours(said)} is taken.`,
        ];
  });
}

/** Clocks of a file may differ by so much, s: those who write it round, and a dive’s end is not always told. */
const AT_ODDS_S = 300;

/**
 * The intervals as a script can have them: together with the dives they may not pass the week it follows. Where they
 * would, those from rest are cut to the shortest that still are; `cut` says whether any was, `fits` whether that was enough.
 */
export function intervalsInScript(
  intervalsS: readonly number[],
  recordings: readonly Recording[],
): { readonly intervalsS: readonly number[]; readonly cut: boolean; readonly fits: boolean } {
  const divedS = recordings.reduce((sum, recording) => sum + lengthS(recording), 0);
  const ended = intervalsS.map((intervalS) => (intervalS === Infinity ? FROM_REST_S : intervalS));
  const fit = (all: readonly number[]) => divedS + all.reduce((sum, intervalS) => sum + intervalS, 0) <= LONGEST_S;
  const shown = fit(ended) ? ended : ended.map((intervalS) => Math.min(FROM_REST_S, intervalS));
  return { intervalsS: shown, cut: shown.some((intervalS, i) => intervalS !== intervalsS[i]), fits: fit(shown) };
}

/** The latest time a recording reaches, s. */
export function lengthS({ timeS }: Recording): number {
  return timeS.reduce((most, time) => (time > most ? time : most), 0);
}

/** Seconds from the beginning of one recording to that of another, negative where the other came first; undefined where the file does not tell. */
export function startsApartS(one: Recording, other: Recording): number | undefined {
  if (one.clockS !== undefined && other.clockS !== undefined) return other.clockS - one.clockS;
  const [from, to] = [one, other].map(({ startedAt = '' }) =>
    // With strokes nobody knows which of day and month comes first.
    /^\d{1,2}\//.test(startedAt) ? undefined : readMoment(startedAt),
  );
  return from && to ? secondsBetween(from, to) : undefined;
}
