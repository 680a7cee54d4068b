import type { Standing } from '../rule';

/** The fastest rise a unit takes as right, m/min. */
export type RateLimit = SteadyLimit | BandedLimit;

interface SteadyLimit {
  kind: 'steady';
  mMin: number;
}

/** Each band holds from its depth down, as far as the next. */
interface BandedLimit {
  kind: 'banded';
  bands: { fromM: number; mMin: number }[];
}

/** The limit at a depth, m/min. */
export function rateLimitAt(limit: RateLimit, depthM: number): number {
  if (limit.kind === 'steady') return limit.mMin;
  let fromM = -1;
  let mMin = Infinity;
  for (const band of limit.bands) {
    if (band.fromM <= depthM && band.fromM > fromM) {
      fromM = band.fromM;
      mMin = band.mMin;
    }
  }
  return mMin;
}

/** The least limit at any depth, m/min. */
export function leastRateLimit(limit: RateLimit): number {
  return limit.kind === 'steady' ? limit.mMin : Math.min(...limit.bands.map(({ mMin }) => mMin));
}

export interface RatePreset {
  readonly title: string;
  readonly limit: RateLimit;
  readonly standing: Standing;
  readonly source: string;
}

/** Limits that have been taught, and one in bands to show what bands do. */
export const RATE_PRESETS: Readonly<Record<'current' | 'buhlmann' | 'classic' | 'banded', RatePreset>> = {
  current: {
    title: 'Current guidance, 9 m/min (30 ft/min)',
    limit: { kind: 'steady', mMin: 9 },
    standing: 'published guidance',
    source: 'US Navy Diving Manual, Revision 4 Change A',
  },
  buhlmann: {
    title: 'Bühlmann’s tables, 10 m/min (33 ft/min)',
    limit: { kind: 'steady', mMin: 10 },
    standing: 'published guidance',
    source: 'Bühlmann’s tables; the figure is from memory',
  },
  classic: {
    title: 'Classic, 18 m/min (60 ft/min)',
    limit: { kind: 'steady', mMin: 18 },
    standing: 'published guidance',
    source: 'US Navy, from 1958 until the change to 30 ft/min',
  },
  banded: {
    title: 'By depth: slower the shallower',
    limit: {
      kind: 'banded',
      bands: [
        { fromM: 30, mMin: 18 },
        { fromM: 10, mMin: 10 },
        { fromM: 0, mMin: 6 },
      ],
    },
    standing: 'illustrative',
    source: 'Our own bands, made from the taught figures and a slow last stretch',
  },
};
