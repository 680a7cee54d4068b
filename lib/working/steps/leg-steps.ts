import { LONGEST_S } from '../../dive/bounds';
import type { Timeline } from '../../dive/timeline';
import type { Gas } from '../../physics/gas';
import { haldane, schreiner } from '../../tissue/loading';
import { fromDive, fromSetting, quantity, type Chain } from '../chain';
import {
  DEPTH_RANGE_M,
  FRACTION_RANGE,
  GAS_NAMES,
  inertFraction,
  lungTerm,
  type InertGas,
  type Site,
} from './pressure-steps';
import { SOURCES } from '../sources';
import type { Named, SymbolName } from '../working';

/** A stretch of a dive, or of the way up that is planned, as a working takes a tension along it. */
export interface WorkingLeg {
  /** Sets its symbols and steps apart from other legs'. */
  readonly name: string;
  readonly title: string;
  readonly fromM: number;
  readonly toM: number;
  readonly minutes: number;
  readonly gas: Gas;
  /** What its depths and its length rest on. */
  readonly from: 'dive' | 'setting';
  /** Of a way that is planned, not dived: no number of it is for changing. */
  readonly planned?: true;
  /** Its length, where that rests on something else. */
  readonly length?: Named;
}

/** A change of depth takes some time. */
const SHORTEST_CHANGE_MIN = 0.01;

/** What a gas's tension is worked out with. */
export interface Loading {
  readonly timeline: Timeline;
  readonly site: Site;
  readonly of: InertGas;
  /** Rate constant of the compartment. */
  readonly k: Named;
  readonly group?: 'history';
}

/** The tension of one gas at the end of a leg, bar: the engine's own equations. */
export function tensionAfterLeg(
  timeline: Timeline,
  k: number,
  of: InertGas,
  startBar: number,
  leg: Pick<WorkingLeg, 'fromM' | 'toM' | 'minutes' | 'gas'>,
): number {
  const { surfaceBar, barPerMetre, lungOffsetBar } = timeline;
  const fraction = inertFraction(leg.gas, of);
  const alveolarBar = (surfaceBar + leg.fromM * barPerMetre - lungOffsetBar) * fraction;
  if (leg.fromM === leg.toM) return haldane(startBar, alveolarBar, k, leg.minutes);
  const rate = ((leg.toM - leg.fromM) / leg.minutes) * barPerMetre * fraction;
  return schreiner(startBar, alveolarBar, rate, k, leg.minutes);
}

/**
 * Takes one gas's tension along one leg: the pressure in the lungs where it begins, and Haldane's or Schreiner's solution.
 * `resultBar` is the engine's tension at its end.
 */
export function legSteps(
  chain: Chain,
  loading: Loading,
  leg: WorkingLeg,
  before: Named,
  symbol: SymbolName,
  resultBar: number,
): Named {
  const { timeline, site, of, k, group } = loading;
  const { name, fromM, toM, minutes } = leg;
  const origin = leg.from === 'dive' ? fromDive : fromSetting;
  const given = (symbol: SymbolName, { within, ...value }: Parameters<typeof fromDive>[1]): Named =>
    origin(symbol, leg.planned || !within ? value : { ...value, within });
  const folded = group ? { group } : {};
  const lungs = lungTerm(timeline);
  const fraction = inertFraction(leg.gas, of);
  const depth = given(`d_${name}`, {
    ...quantity(fromM, 'm'),
    meaning: `depth where this begins: ${leg.title}`,
    within: DEPTH_RANGE_M,
  });
  const share = given(`F_${of}_${name}`, {
    ...quantity(fraction, ''),
    meaning: `fraction of ${GAS_NAMES[of]} breathed: ${leg.title}`,
    within: FRACTION_RANGE,
  });
  const time =
    leg.length ??
    given(`t_${name}`, {
      ...quantity(minutes, 'min'),
      meaning: `how long this takes: ${leg.title}`,
      within: [fromM === toM ? 0 : Math.min(minutes, SHORTEST_CHANGE_MIN), LONGEST_S / 60],
    });
  const alveolar = chain.add({
    id: `step:alveolar-${of}-${name}`,
    title: `${GAS_NAMES[of]} pressure in your lungs at the beginning: ${leg.title}`,
    why: `Water vapour fills part of the lungs; ${GAS_NAMES[of]} has its share of the rest.`,
    expression: `(p_surface + w * ${depth.symbol} ${lungs.expression}) * ${share.symbol}`,
    symbol: `P_alv_${of}_${name}`,
    values: [site.surface, site.water, depth, ...lungs.values, share],
    result: quantity((timeline.surfaceBar + fromM * timeline.barPerMetre - timeline.lungOffsetBar) * fraction, 'bar'),
    source: SOURCES.lungs,
    ...folded,
  });
  const tension = {
    id: `step:tension-${of}-${name}`,
    title: `${GAS_NAMES[of]} in this compartment at the end: ${leg.title}`,
    symbol,
    result: quantity(resultBar, 'bar'),
    source: SOURCES.loading,
    ...folded,
  } as const;
  if (fromM === toM) {
    return chain.add({
      ...tension,
      why: 'At one depth the gap to the lungs shrinks by half in every half-time (Haldane).',
      expression: `${alveolar.symbol} + (${before.symbol} - ${alveolar.symbol}) * exp(-${k.symbol} * ${time.symbol})`,
      values: [alveolar, before, k, time],
    });
  }
  const end = given(`d_${name}_end`, {
    ...quantity(toM, 'm'),
    meaning: `depth where this ends: ${leg.title}`,
    within: DEPTH_RANGE_M,
  });
  const rate = chain.add({
    id: `step:rate-${of}-${name}`,
    title: `how fast the ${GAS_NAMES[of]} pressure in your lungs changes: ${leg.title}`,
    why: 'As the depth changes, the pressure of what you breathe changes with it.',
    expression: `w * (${end.symbol} - ${depth.symbol}) / ${time.symbol} * ${share.symbol}`,
    symbol: `R_${of}_${name}`,
    values: [site.water, end, depth, time, share],
    result: quantity(((toM - fromM) / minutes) * timeline.barPerMetre * fraction, 'bar/min'),
    source: SOURCES.water,
    ...folded,
  });
  return chain.add({
    ...tension,
    why: 'While the depth changes evenly the compartment chases a moving mark (Schreiner).',
    expression: `${alveolar.symbol} + ${rate.symbol} * (${time.symbol} - 1 / ${k.symbol}) - (${alveolar.symbol} - ${before.symbol} - ${rate.symbol} / ${k.symbol}) * exp(-${k.symbol} * ${time.symbol})`,
    values: [alveolar, rate, time, k, before],
  });
}
