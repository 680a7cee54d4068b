import { parseGas, writeGas } from '@/lib/dive/gas-text';
import type { GradientFactors } from '@/lib/dive/dive';
import { DEEPEST_M } from '@/lib/dive/bounds';
import { readGradientFactors, readSiteAltitude } from '@/lib/dive/script/settings/setting-values';
import { AIR, type Gas } from '@/lib/physics/gas';
import { writeTime } from '@/lib/quantity/duration';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import { printFactors } from '@/lib/quantity/percent';
import { parseBefore } from './before-text';
import { amount, listOf, oneOf, type Choice, type Choices } from './choice';
import { MOST_CURVES } from '../plot/curve-looks';
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

export const depth = (first: number) => amount(first, 0, DEEPEST_M);
export const gas: Choice<Gas> = { first: AIR, write: writeGas, read: parseGas };
export const factors = (low: number, high: number): Choice<GradientFactors> => ({
  first: { low, high },
  write: printFactors,
  read: readGradientFactors,
});
export const minutes = (first: number) => amount(first * 60, 1, 7 * 24 * 3600);

/** A name of something that is offered or not; one that is not is passed over where it is shown. */
export const anyId: Pick<Choice<string>, 'write' | 'read'> = { write: (id) => id, read: (id) => accepted(id) };

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
