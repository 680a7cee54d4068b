import { USUAL_VARIATION } from '@/lib/curves/variation';
import { parseGas, writeGas } from '@/lib/dive/gas-text';
import type { GradientFactors } from '@/lib/dive/dive';
import { DEEPEST_M } from '@/lib/dive/bounds';
import { readGradientFactors, readSiteAltitude } from '@/lib/dive/script/setting-values';
import { AIR, type Gas } from '@/lib/physics/gas';
import { writeTime } from '@/lib/quantity/duration';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import { printFactors } from '@/lib/quantity/percent';
import { parseBefore } from './before-text';
import { amount, listOf, oneOf, type Choice, type Choices } from './choice';
import { MOST_CURVES } from './curve-looks';
import type { BeforeDive, CurveWish } from './curve-wish';

/** The plates, in the order of the atlas. */
export const PLATES = [
  {
    id: 'no-stop',
    title: 'No-stop time',
    lead: 'How long you may stay and still come straight up by the model.',
  },
  {
    id: 'limits',
    title: 'Limits',
    lead: 'More pressure around it, and a compartment tolerates more; fast ones bear a great deal, slow ones little.',
  },
  {
    id: 'half-times',
    title: 'Half-times',
    lead: 'At a new pressure each compartment closes half of what is left in every half-time. After six it counts as settled.',
  },
  {
    id: 'ascent-rate',
    title: 'Ascent rate',
    lead: 'What a faster or slower way up leaves in you if you skip every stop, and how long it takes if you make them.',
  },
  {
    id: 'gradient-factors',
    title: 'Gradient factors',
    lead: 'The low one sets where stops begin, the high one what you surface with: every pair of them on one map.',
  },
  { id: 'models', title: 'Models', lead: 'From one ratio to sixteen lines: the same dive by each.' },
  {
    id: 'how-sure',
    title: 'How sure is it?',
    lead: 'Half-times and limits were fitted to people who differ. Here the model’s figure is a band.',
  },
] as const;

export type PlateId = (typeof PLATES)[number]['id'];

const depth = (first: number) => amount(first, 0, DEEPEST_M);
const gas: Choice<Gas> = { first: AIR, write: writeGas, read: parseGas };
const factors = (low: number, high: number): Choice<GradientFactors> => ({
  first: { low, high },
  write: printFactors,
  read: readGradientFactors,
});
const minutes = (first: number) => amount(first * 60, 1, 7 * 24 * 3600);

/** A name of something that is offered or not; one that is not is passed over where it is shown. */
const anyId: Pick<Choice<string>, 'write' | 'read'> = { write: (id) => id, read: (id) => accepted(id) };

const USUAL = {
  gradientFactors: { low: 0.85, high: 0.85 },
  altitudeM: 0,
  arrival: 'settled',
  before: undefined,
} as const;

function writeBeforeExactly(before: BeforeDive | undefined): string {
  if (!before) return 'none';
  const { depthM, stayS, surfaceS } = before;
  return `${Math.round(depthM * 100) / 100} m, ${writeTime(stayS)}, ${writeTime(surfaceS)} ago`;
}

const wish: Pick<Choice<CurveWish>, 'write' | 'read'> = {
  write: (one) =>
    [
      writeGas(one.gas),
      printFactors(one.gradientFactors),
      `${Math.round(one.altitudeM * 100) / 100} m`,
      one.arrival,
      writeBeforeExactly(one.before),
    ].join(';'),
  read: (text): Parsed<CurveWish> => {
    const [gasText = '', factorsText = '', altitudeText = '', arrivalText = '', beforeText = ''] = text.split(';');
    const gasRead = parseGas(gasText);
    if (!gasRead.ok) return gasRead;
    const factorsRead = readGradientFactors(factorsText);
    if (!factorsRead.ok) return factorsRead;
    const altitude = readSiteAltitude(altitudeText);
    if (!altitude.ok) return altitude;
    const before = parseBefore(beforeText);
    if (!before.ok) return before;
    if (arrivalText !== 'settled' && arrivalText !== 'just arrived')
      return refused(`${arrivalText} says nothing of the diver.`, 'Write settled or just arrived.');
    return accepted({
      gas: gasRead.value,
      gradientFactors: factorsRead.value,
      altitudeM: altitude.value,
      arrival: arrivalText,
      before: before.value,
    });
  },
};

export interface NoStopValues {
  readonly wishes: readonly CurveWish[];
  readonly counted: 'arrival' | 'surface';
  readonly tables: readonly string[];
  readonly at: number;
}
export const NO_STOP: Choices<NoStopValues> = {
  wishes: listOf<CurveWish>(
    wish,
    [
      { gas: AIR, ...USUAL },
      { gas: { o2: 0.32, he: 0 }, ...USUAL },
      { gas: AIR, ...USUAL, before: { depthM: 30, stayS: 1200, surfaceS: 3600 } },
    ],
    MOST_CURVES,
    1,
  ),
  counted: oneOf('arrival', ['arrival', 'surface']),
  tables: listOf(anyId, [], 20),
  at: depth(30),
};

export interface LimitsValues {
  readonly compartments: readonly number[];
  readonly pointed: number;
  readonly factors: GradientFactors;
  readonly anchor: number;
  readonly helium: '0' | '0.5' | '1';
  readonly at: number;
}
const compartment = (first: number) => amount(first, 1, 16);
export const LIMITS: Choices<LimitsValues> = {
  compartments: listOf(compartment(1), [1, 5, 12], 16),
  pointed: compartment(5),
  factors: factors(0.4, 0.85),
  anchor: depth(15),
  helium: oneOf('0', ['0', '0.5', '1']),
  at: depth(9),
};

export interface HalfTimesValues {
  readonly from: number;
  readonly to: number;
  readonly axis: 'even' | 'doubling';
  readonly compartment: number;
  /** Of 80 along the axis. */
  readonly place: number;
}
export const HALF_TIMES: Choices<HalfTimesValues> = {
  from: depth(0),
  to: depth(30),
  axis: oneOf('even', ['even', 'doubling']),
  compartment: compartment(5),
  place: amount(20, 0, 80),
};

export interface AscentRateValues {
  readonly depth: number;
  readonly times: readonly number[];
  readonly gas: Gas;
  readonly factors: GradientFactors;
  readonly rate: number;
}
export const ASCENT_RATE: Choices<AscentRateValues> = {
  depth: depth(36),
  times: listOf(amount(10, 0.1, 7 * 24 * 60), [10, 20, 30], MOST_CURVES, 1),
  gas,
  factors: factors(0.4, 0.85),
  rate: amount(9, 0.5, 30),
};

export interface GradientFactorValues {
  readonly depth: number;
  readonly time: number;
  readonly gas: Gas;
  readonly figure: 'timeToSurface' | 'noStop' | 'creditedNoStop';
  readonly step: '5' | '2' | '1';
  readonly at: GradientFactors;
}
export const GRADIENT_FACTORS: Choices<GradientFactorValues> = {
  depth: depth(40),
  time: minutes(25),
  gas,
  figure: oneOf('timeToSurface', ['timeToSurface', 'noStop', 'creditedNoStop']),
  step: oneOf('5', ['5', '2', '1']),
  at: factors(0.4, 0.85),
};

export interface ModelsValues {
  /** Models taken off the plot. */
  readonly off: readonly string[];
  readonly at: number;
  readonly depth: number;
  readonly time: number;
  readonly atTime: number;
}
export const MODELS: Choices<ModelsValues> = {
  off: listOf(anyId, [], 20),
  at: depth(30),
  depth: depth(36),
  time: minutes(25),
  atTime: amount(25 * 60, 0, 8 * 24 * 3600),
};

export interface HowSureValues {
  readonly halfTimes: number;
  readonly limits: number;
  readonly gauge: number;
  readonly start: number;
  readonly gas: Gas;
  readonly factors: GradientFactors;
  readonly depth: number;
  readonly time: number;
  readonly at: number;
  readonly atTime: number;
}
/** As far as anything that was fitted may be off in the band. */
export const MOST_OFF = 0.1;
export const MOST_GAUGE_M = 3;
const share = (first: number) => amount(first, 0, MOST_OFF);
export const HOW_SURE: Choices<HowSureValues> = {
  halfTimes: share(USUAL_VARIATION.halfTimes),
  limits: share(USUAL_VARIATION.limits),
  gauge: amount(USUAL_VARIATION.depthM, 0, MOST_GAUGE_M),
  start: share(USUAL_VARIATION.start),
  gas,
  factors: factors(0.85, 0.85),
  depth: depth(36),
  time: minutes(25),
  at: depth(30),
  atTime: amount(25 * 60, 0, 8 * 24 * 3600),
};
