import { LONGEST_S } from '../../dive/bounds';
import type { Timeline } from '../../dive/timeline';
import { ambientBarAt } from '../../exposure/gas-depths';
import { NOTHING_COUNTS_BAR } from '../../exposure/oxygen-rates';
import { gasName } from '../../physics/gas';
import { fromDive, quantity, type Chain } from '../chain';
import { legsUntilNow, type LegUntilNow } from '../steps/legs-until-now';
import type { Site } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Named, WorkingTable } from '../working';
import { SAME_PRESSURE_BAR } from '../../exposure/exposure-rate';

/** So many legs that add oxygen are worked through, the latest ones. */
const OXYGEN_LEGS_SHOWN = 8;

/** A leg with the oxygen pressures at its ends, bar. */
export interface OxygenLeg extends LegUntilNow {
  readonly index: number;
  readonly startBar: number;
  readonly endBar: number;
}

export interface OxygenLegs {
  /** The legs worked through, in order: those that add something, and the intervals between them. */
  readonly legs: readonly OxygenLeg[];
  /** The first leg worked through; those before are taken as they stood. */
  readonly first: number;
  /** Whether any leg before adds something. */
  readonly leftOut: boolean;
}

/** The legs until a sample with their oxygen pressures at both ends, bar. */
export function oxygenLegsNow(timeline: Timeline, sample: number): OxygenLegs {
  const all = legsUntilNow(timeline, sample).map((one, index): OxygenLeg => {
    const { o2 } = one.leg.gas;
    return {
      ...one,
      index,
      startBar: o2 * ambientBarAt(one.leg.fromM, timeline),
      endBar: o2 * ambientBarAt(one.leg.toM, timeline),
    };
  });
  const counts = (one: OxygenLeg) => one.leg.minutes > 0 && Math.max(one.startBar, one.endBar) > NOTHING_COUNTS_BAR;
  const counting = all.filter((one) => counts(one) && !one.interval);
  const first = counting.at(-OXYGEN_LEGS_SHOWN)?.index ?? 0;
  return {
    legs: all.slice(first).filter((one) => counts(one) || (one.interval && one.leg.minutes > 0)),
    first,
    leftOut: counting.some(({ index }) => index < first),
  };
}

/** Whether the oxygen pressure is the same throughout. */
export function isLevel({ startBar, endBar }: OxygenLeg): boolean {
  return Math.abs(endBar - startBar) < SAME_PRESSURE_BAR;
}

/** The time of a leg as a named value of a working, min. */
export function legTime({ leg }: OxygenLeg): Named {
  return fromDive(`t_${leg.name}`, {
    ...quantity(leg.minutes, 'min'),
    meaning: `how long this takes: ${leg.title}`,
    within: [Math.min(leg.minutes, 0.01), LONGEST_S / 60],
  });
}

interface PressureGiven {
  readonly depthM: number;
  readonly bar: number;
  /** Sets its step and its symbols apart: '' or 'end'. */
  readonly at: '' | 'end';
}

/** Oxygen pressure at one end of a leg. */
export function legPressureStep(
  chain: Chain,
  site: Site,
  { leg }: OxygenLeg,
  { depthM, bar, at }: PressureGiven,
): Named {
  const suffix = at === '' ? leg.name : `${leg.name}_end`;
  const where = at === '' ? 'where this begins' : 'where this ends';
  return chain.add({
    id: `step:oxygen-${leg.name}${at === '' ? '' : '-end'}`,
    title: `oxygen pressure ${where}: ${leg.title}`,
    why: 'Oxygen has its share of the pressure around you.',
    expression: `(p_surface + w * d_${suffix}) * F_O2_${leg.name}`,
    symbol: `p_O2_${suffix}`,
    values: [
      site.surface,
      site.water,
      fromDive(`d_${suffix}`, {
        ...quantity(depthM, 'm'),
        meaning: `depth ${where}: ${leg.title}`,
      }),
      fromDive(`F_O2_${leg.name}`, {
        ...quantity(leg.gas.o2, ''),
        meaning: `fraction of oxygen breathed: ${leg.title}`,
      }),
    ],
    result: quantity(bar, 'bar'),
    source: SOURCES.dalton,
    group: 'history',
  });
}

/** One row for each leg worked through. */
export function oxygenTable(
  legs: readonly OxygenLeg[],
  added: (one: OxygenLeg) => number,
  title: string,
  unit: '' | 'units',
): WorkingTable {
  return {
    caption: 'What each leg adds',
    columns: [
      { title: 'leg', unit: '' },
      { title: 'gas breathed', unit: '' },
      { title: 'oxygen pressure, from', unit: 'bar' },
      { title: 'to', unit: 'bar' },
      { title: 'time', unit: 'min' },
      { title, unit },
    ],
    rows: legs
      .filter(({ interval }) => !interval)
      .map((one) => [one.leg.title, gasName(one.leg.gas), one.startBar, one.endBar, one.leg.minutes, added(one)]),
  };
}
