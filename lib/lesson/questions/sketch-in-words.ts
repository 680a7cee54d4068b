import { readNumber } from '../../quantity/number';
import { accepted, refused, type Parsed } from '../../quantity/parsed';
import { sayMoment } from './compare-sketch';
import { drawnAt } from './draw-sketch';
import type { DrawAsked, Sketch } from './sketch';

/** A sketch in words, as it stands: the value at each moment that has one, and the way it goes from each to the next. */
export function saySketch(
  sketch: Sketch,
  boxesS: readonly number[],
  asked: DrawAsked,
  print: (value: number) => string,
): string {
  // Depths have their own words: more of one is further down.
  const [more, less] = asked.dimension === 'depth' ? ['down', 'up'] : ['up', 'down'];
  const told: string[] = [];
  let last: string | undefined;
  let lastValue = 0;
  for (const timeS of boxesS) {
    const value = drawnAt(sketch, timeS);
    if (value === undefined) continue;
    const printed = print(value);
    const at = sayMoment(timeS, asked);
    if (last === undefined) told.push(`${printed} at ${at}`);
    else if (printed === last) told.push(`level to ${at}`);
    else told.push(`${value > lastValue ? more : less} to ${printed} at ${at}`);
    [last, lastValue] = [printed, value];
  }
  return told.length === 0 ? '' : `Your curve: ${told.join(', ')}.`;
}

/** A moment as it is typed, minutes or minutes and seconds on the clock beside the axis; s of the run. */
export function readMoment(text: string, { fromS, toS, zeroS, since }: DrawAsked): Parsed<number> {
  const range = `Write a moment between ${sayMoment(fromS, { zeroS, since: undefined })} and ${sayMoment(toS, { zeroS, since })}, such as ${sayMoment(fromS + (toS - fromS) / 3, { zeroS, since: undefined })}.`;
  const [, minutes, seconds] = /^(\d+):(\d{1,2})$/.exec(text.trim()) ?? [];
  const read = readNumber(minutes ?? text.replace(/min\s*$/, ''));
  if (!read.ok) return refused(read.what, range);
  const timeS = Math.round(zeroS + read.value.value * 60 + Number(seconds ?? 0));
  return timeS > fromS && timeS < toS ? accepted(timeS) : refused('The paper does not reach there.', range);
}
