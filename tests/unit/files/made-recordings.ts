import { seeded } from '@/lib/quantity/seeded';
import type { Gas } from '@/lib/physics/gas';
import type { Recording } from '@/lib/files/records/record';

/** A recording of invented samples, for tests: rows count from 2, as under a heading. */
export function madeRecording(
  samples: readonly (readonly [number, number])[],
  more: Partial<Recording> = {},
): Recording {
  return {
    name: 'Dive 1',
    rowsAre: 'row',
    row: Uint32Array.from(samples, (_, i) => i + 2),
    timeS: Float64Array.from(samples, ([time]) => time),
    depthM: Float64Array.from(samples, ([, depth]) => depth),
    switches: [],
    unit: {},
    temperatureC: undefined,
    startedAt: undefined,
    clockS: undefined,
    intervalBeforeS: undefined,
    altitudeM: undefined,
    water: undefined,
    unread: [],
    ...more,
  };
}

export function switchTo(timeS: number, o2: number, he = 0): { timeS: number; gas: Gas } {
  return { timeS, gas: { o2, he } };
}

/** Pieces of a text, so small that every joint is tried. */
export function piecesOf(text: string, size = 7): string[] {
  const pieces: string[] = [];
  for (let at = 0; at < text.length; at += size) pieces.push(text.slice(at, at + size));
  return pieces;
}

/** A square-ish dive with a sensor's noise, sampled every `everyS` seconds for `minutes` minutes. */
export function noisyDive(minutes: number, everyS: number, deepestM: number, seed: number): [number, number][] {
  const random = seeded(seed);
  const endS = minutes * 60;
  const samples: [number, number][] = [];
  for (let t = 0; t <= endS; t += everyS) {
    const shape = Math.min(t / 3, deepestM, (endS - t) / 8);
    const swell = shape > 5 ? 1.5 * Math.sin(t / 70) + 0.3 * (random() - 0.5) : 0;
    samples.push([t, Math.round(Math.max(0, shape + swell) * 10) / 10]);
  }
  return samples;
}
