import fc from 'fast-check';
import type { Schedule } from '@/lib/ascent/plan/schedule';
import type { Factors, Place, Way } from './second-model';
import { placeAt } from './second-model';

/** A day of diving as someone would write it down, in whole metres and minutes, without the language of scripts. */
export interface ToldDay {
  readonly water: 'reference' | 'fresh' | 'sea';
  readonly altitudeM: number;
  readonly low: number;
  readonly high: number;
  readonly gas: GasName;
  readonly carries50From21: boolean;
  readonly lastStopM: 3 | 6;
  readonly ascentMMin: number;
  readonly steps: readonly ToldStep[];
}

type GasName = keyof typeof GASES;

const GASES = {
  air: { o2: 0.21, he: 0 },
  '28%': { o2: 0.28, he: 0 },
  '32%': { o2: 0.32, he: 0 },
  '50%': { o2: 0.5, he: 0 },
  '21/5': { o2: 0.21, he: 0.05 },
  '21/35': { o2: 0.21, he: 0.35 },
  '18/45': { o2: 0.18, he: 0.45 },
} as const;

type ToldStep =
  | { readonly kind: 'go'; readonly fromM: number; readonly toM: number; readonly rateMMin: number }
  | { readonly kind: 'stay'; readonly minutes: number }
  | { readonly kind: 'switch'; readonly gas: GasName }
  | { readonly kind: 'interval'; readonly minutes: number };

interface Drawn {
  readonly bottomM: number;
  readonly bottomMin: number;
  readonly levels: readonly { readonly toM: number; readonly rate: number; readonly minutes: number }[];
  readonly switches: boolean;
  readonly stops: number;
  readonly up: number;
}

const whole = (min: number, max: number) => fc.integer({ min, max });

const anyDive: fc.Arbitrary<Drawn> = fc.record({
  bottomM: whole(12, 50),
  bottomMin: whole(4, 30),
  levels: fc.array(fc.record({ toM: whole(5, 42), rate: fc.constantFrom(3, 6, 9, 18), minutes: whole(0, 20) }), {
    maxLength: 3,
  }),
  switches: fc.boolean(),
  stops: whole(0, 9),
  up: fc.constantFrom(6, 9, 18),
});

function stepsOf({ bottomM, bottomMin, levels, switches, stops, up }: Drawn): ToldStep[] {
  const steps: ToldStep[] = [];
  let depthM = 0;
  const go = (toM: number, rateMMin: number) => {
    if (toM !== depthM) steps.push({ kind: 'go', fromM: depthM, toM, rateMMin });
    depthM = toM;
  };
  const stay = (minutes: number) => minutes > 0 && steps.push({ kind: 'stay', minutes });
  go(bottomM, 18);
  stay(bottomMin);
  for (const { toM, rate, minutes } of levels) {
    go(toM, rate);
    stay(minutes);
  }
  if (switches) {
    if (depthM > 21) go(20, 9);
    steps.push({ kind: 'switch', gas: '50%' });
    stay(2);
  }
  if (stops > 0) {
    go(Math.min(depthM, 4), 9);
    stay(stops);
  }
  go(0, up);
  return steps;
}

/** Nitrogen and helium, low = high and low < high, with switches, at altitude, one dive or two. */
export const anyToldDay: fc.Arbitrary<ToldDay> = fc
  .record({
    water: fc.constantFrom('reference' as const, 'fresh' as const, 'sea' as const),
    altitudeM: fc.constantFrom(0, 0, 500, 2000),
    low: fc.constantFrom(20, 30, 40, 50, 85),
    high: fc.constantFrom(70, 80, 85, 95),
    gas: fc.constantFrom<GasName>('air', 'air', '28%', '32%', '21/35', '18/45'),
    carries50From21: fc.boolean(),
    lastStopM: fc.constantFrom(3 as const, 3 as const, 6 as const),
    ascentMMin: fc.constantFrom(3, 6, 9, 9, 18),
    dives: fc.array(anyDive, { minLength: 1, maxLength: 2 }),
    intervalMin: whole(5, 90),
    waitsAfter: whole(0, 30),
  })
  .map(({ dives, intervalMin, waitsAfter, high, ...rest }) => ({
    ...rest,
    high: Math.max(rest.low, high),
    steps: [
      ...dives.flatMap((dive, index): ToldStep[] => [
        ...(index > 0 ? [{ kind: 'interval' as const, minutes: intervalMin }] : []),
        ...stepsOf(dive),
      ]),
      ...(waitsAfter > 0 ? [{ kind: 'interval' as const, minutes: waitsAfter }] : []),
    ],
  }));

const METRES_PER_FOOT = 0.3048;

/** The day as a script: in feet if told so, and with each change of depth and stay cut at a share of it, 0 for not at all. */
export function scriptOf(day: ToldDay, { feet = false, cut = 0 } = {}): string {
  const digits = (value: number) => String(Number(value.toPrecision(15)));
  const length = (metres: number) => (feet ? `${digits(metres / METRES_PER_FOOT)} ft` : `${digits(metres)} m`);
  const lines = [
    `water: ${day.water}`,
    `altitude: ${length(day.altitudeM)}`,
    `gradient factors: ${day.low}/${day.high}`,
    `gas: ${day.gas}`,
    ...(day.carries50From21 ? [`carry: 50% from ${length(21)}`] : []),
    `last stop: ${length(day.lastStopM)}`,
    `plan ascent: ${length(day.ascentMMin)}/min`,
  ];
  for (const step of day.steps) {
    if (step.kind === 'go') {
      const { fromM, toM, rateMMin } = step;
      for (const pointM of cut > 0 ? [fromM + (toM - fromM) * cut, toM] : [toM])
        lines.push(
          `${toM > fromM ? 'descend' : 'ascend'} to ${pointM === 0 ? 'surface' : length(pointM)} at ${length(rateMMin)}/min`,
        );
    } else if (step.kind === 'stay') {
      const seconds = step.minutes * 60;
      const first = Math.round(seconds * cut);
      lines.push(...(first > 0 ? [`stay ${first} s`, `stay ${seconds - first} s`] : [`stay ${seconds} s`]));
    } else if (step.kind === 'switch') lines.push(`switch to ${step.gas}`);
    else lines.push(`interval ${step.minutes} min`);
  }
  return `${lines.join('\n')}\n`;
}

/** The same for the second model. */
export function toldOf(day: ToldDay): { place: Place; factors: Factors; ways: Way[] } {
  const density = { reference: undefined, fresh: 1000, sea: 1030 }[day.water];
  let gas: { readonly o2: number; readonly he: number } = GASES[day.gas];
  let depthM = 0;
  const ways: Way[] = [];
  for (const step of day.steps) {
    if (step.kind === 'switch') gas = GASES[step.gas];
    else if (step.kind === 'go') {
      ways.push({ fromM: step.fromM, toM: step.toM, minutes: Math.abs(step.toM - step.fromM) / step.rateMMin, ...gas });
      depthM = step.toM;
    } else if (step.kind === 'stay') ways.push({ fromM: depthM, toM: depthM, minutes: step.minutes, ...gas });
    else {
      ways.push({ fromM: 0, toM: 0, minutes: step.minutes, ...GASES.air });
      gas = GASES[day.gas];
    }
  }
  return { place: placeAt(day.altitudeM, density), factors: { low: day.low / 100, high: day.high / 100 }, ways };
}

/** The stops of a plan, in few words. */
export const said = ({ stops }: Schedule) =>
  stops.map(({ depthM, minutes }) => `${depthM} m ${minutes} min`).join(', ');
