import type { Recording } from './record';
import { FROM_REST_S, intervalsInScript, lengthS, startsApartS, surfaceIntervals } from './surface-intervals';

/** Dives whose tissues carry over from each to the next, by their places in the file's order. */
export interface Series {
  readonly dives: readonly number[];
  /** Why it begins here: as the first of the file, after a rest, or because the file does not tell the time before. */
  readonly begins: 'first' | 'rest' | 'untold';
}

/** Splits the dives of a log where one begins from rest, or where nobody knows how long the diver was at the surface. */
export function seriesOf(recordings: readonly Recording[]): Series[] {
  const series: { dives: number[]; begins: Series['begins'] }[] = [];
  surfaceIntervals(recordings).forEach((intervalS, place) => {
    const goesOn = place > 0 && intervalS !== undefined && intervalS < FROM_REST_S;
    if (goesOn) series.at(-1)!.dives.push(place);
    else series.push({ dives: [place], begins: place === 0 ? 'first' : intervalS === undefined ? 'untold' : 'rest' });
  });
  return series;
}

/** A few dives without a rest between them are brought together unless a person says otherwise. */
const FEW = 5;

/** The dives to bring unless a person says otherwise; none where the file holds more than one series. */
export function likelyChoice(recordings: readonly Recording[]): number[] {
  const series = seriesOf(recordings);
  const oneDay = recordings.length <= FEW && series.every(({ begins }) => begins !== 'rest');
  if (series.length !== 1 && !oneDay) return [];
  const intervalsS = surfaceIntervals(recordings).map((intervalS) => intervalS ?? 0);
  return intervalsInScript(intervalsS, recordings).fits ? recordings.map((_, place) => place) : [];
}

/**
 * The dives of a file in the order they were dived: logs are often written newest first. A file that does not tell when
 * all of them began keeps its own order.
 */
export function inDiveOrder(recordings: readonly Recording[]): {
  readonly recordings: readonly Recording[];
  readonly turned: boolean;
} {
  const [first] = recordings;
  const sinceFirst = first
    ? recordings.map((recording) => (recording === first ? 0 : startsApartS(first, recording)))
    : [];
  if (sinceFirst.includes(undefined)) return { recordings, turned: false };
  const order = recordings
    .map((_, place) => place)
    .sort((one, other) => sinceFirst[one]! - sinceFirst[other]! || one - other);
  // Dives cannot overlap: where they would, each counts from a nought of its own, and the file's order is all there is.
  const apart = order.every(
    (place, i) => i === 0 || sinceFirst[place]! - sinceFirst[order[i - 1]!]! >= lengthS(recordings[order[i - 1]!]!),
  );
  const turned = apart && order.some((place, i) => place !== i);
  return { recordings: turned ? order.map((place) => recordings[place]!) : recordings, turned };
}

export const TURNED_NOTE =
  'The file does not list its dives in the order they were dived; here they stand in that order.';
