import { figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Settings, Step } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import type { Recording, UnitChannel } from '@/lib/files/records/record';
import { recordingsOfTimeline } from '../record-of-timeline';

/** What a unit is set to. */
export type Truth = Pick<Settings, 'gradientFactors'> & Partial<Pick<Settings, 'water' | 'altitudeM' | 'gas'>>;

/** How a record departs from what its unit worked out. */
export interface Disturbance {
  /** Samples by which the figures stand too late. */
  readonly lateSamples: number;
  /** How no-stop times are shown: as they are, or to the whole minute; rounding down is the trade’s way. */
  readonly minutes: 'exact' | 'down' | 'nearest';
  /** What ceilings are shown to, m; 0 for as they are, and 3 as first stops. */
  readonly ceilingStepM: 0 | 0.1 | 1 | 3;
  /** The longest no-stop time the display has, min. */
  readonly capMin: number;
  /** Of all readings: left out, and far off. */
  readonly missing: number;
  readonly outlying: number;
}

export const CLEAN: Disturbance = {
  lateSamples: 0,
  minutes: 'exact',
  ceilingStepM: 0,
  capMin: Infinity,
  missing: 0,
  outlying: 0,
};

/** An invented dive of one kind or another: with stops or without, square or stepped. */
export function madeSteps(random: () => number): Step[] {
  const bottomM = Math.round(24 + random() * 24);
  const minutes = Math.round(8 + random() * 22);
  const midM = Math.round(bottomM / 2);
  return [
    { kind: 'descend', toM: bottomM, durationS: bottomM * 3 },
    { kind: 'stay', durationS: minutes * 60 },
    { kind: 'ascend', toM: midM, durationS: (bottomM - midM) * 7 },
    { kind: 'stay', durationS: 240 + Math.round(random() * 600) },
    { kind: 'ascend', toM: 5, durationS: (midM - 5) * 7 },
    { kind: 'stay', durationS: 300 + Math.round(random() * 900) },
    { kind: 'ascend', toM: 0, durationS: 60 },
  ];
}

/**
 * What a unit with these settings records of a dive every ten seconds, worn in reference water at sea level on air. Known
 * truth: the unit is the model itself, with what displays and records do to figures put on top.
 */
export function recordOf(
  truth: Truth,
  steps: readonly Step[],
  disturbance: Disturbance,
  random: () => number,
): Recording {
  const settings = { ...defaultSettings(), ...truth };
  const start = { kind: 'adapted' as const, altitudeM: settings.altitudeM };
  const worn = { ...settings, start };
  const timeline = computeTimeline({ settings: worn, steps: [...steps], lines: [] }, 10);
  const [recording] = recordingsOfTimeline(timeline, figuresOf(timeline, worn));
  const { noStopS, ceilingM } = recording!.unit;
  const shown = (values: Float64Array, display: (value: number) => number, farOff: () => number) =>
    values.map((_, i) => {
      const value = values[Math.max(0, i - disturbance.lateSamples)]!;
      if (random() < disturbance.missing) return NaN;
      return random() < disturbance.outlying ? farOff() : display(value);
    });
  const { minutes, ceilingStepM, capMin } = disturbance;
  const round = { exact: (min: number) => min, down: (min: number) => Math.floor(min + 1e-6), nearest: Math.round }[
    minutes
  ];
  // Where the model knows no end the display shows its longest.
  const noStop = shown(
    noStopS!.map((seconds) => (Number.isFinite(seconds) ? seconds : 99 * 60)),
    (seconds) => 60 * Math.min(capMin, 99, round(seconds / 60)),
    () => 60 * Math.round(random() * 99),
  );
  const stepped = (depth: number) =>
    ceilingStepM === 0
      ? depth
      : ceilingStepM === 3
        ? Math.ceil(depth / 3 - 1e-9) * 3
        : Math.round(depth / ceilingStepM) * ceilingStepM;
  const ceiling = shown(ceilingM!, stepped, () => Math.round(random() * 30));
  const channel: UnitChannel = ceilingStepM === 3 ? 'stopDepthM' : 'ceilingM';
  return {
    ...recording!,
    altitudeM: 0,
    water: 'reference',
    switches: [{ timeS: 0, gas: { o2: 0.21, he: 0 } }],
    unit: { noStopS: noStop, [channel]: ceiling },
  };
}

/** Limits drawn by lot, to the percent. */
export function madeLimits(random: () => number): Truth['gradientFactors'] {
  const high = 60 + Math.round(random() * 40);
  const low = Math.round(20 + random() * (high - 20));
  return { low: low / 100, high: high / 100 };
}

/** Disturbances of every kind, none or several at once. */
export function madeDisturbance(random: () => number): Disturbance {
  const pick = <Item>(items: readonly Item[]) => items[Math.floor(random() * items.length)]!;
  return {
    lateSamples: pick([0, 0, 1, 1, 2]),
    minutes: pick(['exact', 'down', 'nearest'] as const),
    ceilingStepM: pick([0, 0.1, 1, 3] as const),
    capMin: pick([Infinity, 99, 60, 30]),
    missing: pick([0, 0.1, 0.5]),
    outlying: pick([0, 0.004, 0.02]),
  };
}
