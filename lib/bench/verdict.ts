import { sayDepth } from '../quantity/depth';
import type { UnitSystem } from '../quantity/unit-system';
import type { BenchSettings, BenchUnit, Readings } from './bench-settings';
import { printDeviation, sayAllowance } from './bench-words';
import { depthDeviations, driftOf, hysteresisOf, type DepthDeviation } from './deviations';
import type { Expected } from './expected';
import { oddFigures } from './other-figures';
import { seemsSetTo } from './water-hint';

/** From the gravest to the best; a unit gets the first that applies. */
export const RULINGS = ['stop', 'faulty', 'out', 'unread', 'unjudged', 'odd', 'in'] as const;
export type Ruling = (typeof RULINGS)[number];

export interface Verdict {
  readonly ruling: Ruling;
  /** What to make of it, in one sentence. */
  readonly headline: string;
  /** Why, each on its own. */
  readonly reasons: readonly string[];
}

/** The same in a word or two, for a list. */
export const RULING_WORDS: Readonly<Record<Ruling, string>> = {
  stop: 'showed no depth',
  faulty: 'a fault was seen',
  out: 'outside what was stated',
  unread: 'not all read',
  unjudged: 'not judged',
  odd: 'depths within, other figures odd',
  in: 'within what was stated',
};

const HEADLINES: Readonly<Record<Ruling, string>> = {
  stop: 'Stop the run. Do not return this unit to service.',
  faulty:
    'A fault was seen. Do not return this unit to service until its maker’s service manual has been followed; the run may go on with the others.',
  out: 'Outside the tolerance you stated. Do not return this unit to service until its maker’s service manual has been followed.',
  unread: 'Not all depths have been read yet.',
  unjudged: 'No tolerance has been stated, so its deviations are told and not judged.',
  odd: 'Its depths are within the tolerance you stated, but it showed figures that a correct unit under these limits does not.',
  in: 'Every reading is within what you stated. This is not a certification.',
};

/** What the readings of one unit come to, with the reasons. */
export function verdictOf(
  unit: BenchUnit,
  expected: readonly Expected[],
  readings: Readings,
  settings: BenchSettings,
  system: UnitSystem,
): Verdict {
  const deviations = depthDeviations(expected, readings, settings);
  const having = (standing: DepthDeviation['standing']) => deviations.filter((one) => one.standing === standing);
  const reasons: string[] = [];
  const blank = having('nothing shown');
  if (blank.length > 0) reasons.push(`No depth reading at ${depths(blank, system)}.`);
  const faults = expected.flatMap(({ checkpoint }) => {
    const fault = readings[checkpoint.name]?.fault;
    return fault === undefined ? [] : [`At “${checkpoint.name}”: ${fault}.`];
  });
  reasons.push(...faults);
  for (const { expected: one, deviationM, allowedM } of having('out')) {
    reasons.push(
      `At “${one.checkpoint.name}” it is off by ${printDeviation(deviationM!, system)}; ${sayAllowance(allowedM!, system)} is allowed.`,
    );
  }
  const wide = overStated(deviations, settings, system);
  reasons.push(...wide);
  const water = seemsSetTo(unit.water, deviations);
  if (water !== undefined)
    reasons.push(
      `Its deviations grow with depth as those of a unit set to ${water} water would: look at its setting before you blame its sensor.`,
    );
  const odd = oddFigures(expected, readings, system);
  reasons.push(...odd.map(({ text }) => `It showed ${text}.`));
  if (odd.some(({ figure }) => figure === 'noStopMin' || figure === 'stopM'))
    reasons.push('Look at its gas, its altitude and its conservatism, and whether it still carries an earlier dive.');
  const unread = deviations.filter(({ standing, expected: one }) => standing === 'not read' && one.gaugeM > 0);
  // A unit that has failed is not asked for the rest.
  if (unread.length > 0 && faults.length === 0)
    reasons.push(`Still to be read: ${unread.map(({ expected: one }) => one.checkpoint.name).join(', ')}.`);
  const ruling = rulingOf({
    stop: blank.length > 0,
    faulty: faults.length > 0,
    out: having('out').length + wide.length > 0,
    unread: unread.length > 0,
    unjudged: having('not judged').length > 0,
    odd: odd.length > 0,
  });
  return { ruling, headline: HEADLINES[ruling], reasons };
}

function rulingOf(applies: Readonly<Record<Exclude<Ruling, 'in'>, boolean>>): Ruling {
  return RULINGS.find((ruling) => ruling !== 'in' && applies[ruling]) ?? 'in';
}

/** Hysteresis and drift beyond what was stated for them. */
function overStated(
  deviations: readonly DepthDeviation[],
  { hysteresisM, driftM }: BenchSettings,
  system: UnitSystem,
): string[] {
  const beyond = (valueM: number, statedM: number | null) => statedM !== null && Math.abs(valueM) > statedM + 1e-9;
  return [
    ...hysteresisOf(deviations)
      .filter(({ differenceM }) => beyond(differenceM, hysteresisM))
      .map(
        ({ gaugeM, differenceM }) =>
          `At ${sayDepth(gaugeM, system)} on the gauge it reads ${printDeviation(differenceM, system)} on the way out against the way in; you allow ${sayAllowance(hysteresisM!, system)}.`,
      ),
    ...driftOf(deviations)
      .filter((drift) => beyond(drift.driftM, driftM))
      .map(
        (drift) =>
          `In the hold at ${sayDepth(drift.gaugeM, system)} it drifted by ${printDeviation(drift.driftM, system)}; you allow ${sayAllowance(driftM!, system)}.`,
      ),
  ];
}

/** `10 m and 16 m`, each depth once. */
function depths(deviations: readonly DepthDeviation[], system: UnitSystem): string {
  const said = [...new Set(deviations.map(({ expected }) => sayDepth(expected.gaugeM, system)))];
  return said.join(', ').replace(/, ([^,]*)$/, ' and $1');
}
