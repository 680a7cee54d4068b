import published from '../../../content/published/zhl16.json';
import type { Obtained } from '../../../content/published/schema';
import type { Timeline } from '../../dive/timeline';
import { compartments as publishedCompartments } from '../../tissue/coefficients';
import { mixedCoefficient } from '../../tissue/limit';
import { fromPublished, fromSetting, quantity, type Chain } from '../chain';
import { GAS_NAMES, type InertGas } from './pressure-steps';
import { SOURCES } from '../sources';
import type { Named, SymbolName } from '../working';

/** Compartments are counted from 0 here; people count from 1 and call the first by its variant. */
export function compartmentName({ conditions }: Timeline, compartment: number): string {
  return compartment === 0 ? conditions.model.first : String(compartment + 1);
}

const HALF_TIME_RANGE_MIN = [0.5, 2000] as const;
const A_RANGE_BAR = [0, 3] as const;
const B_RANGE = [0.3, 1] as const;

/** The tests hold the file to its schema, which says the same. */
const rows = published.values as readonly PublishedRow[];

interface PublishedRow {
  readonly compartment: string;
  readonly nitrogen: { readonly obtained: Readonly<Record<'halfTimeMin' | 'aA' | 'aB' | 'aC' | 'b', Obtained>> };
  readonly helium: { readonly obtained: Readonly<Record<'halfTimeMin' | 'a' | 'b', Obtained>> };
}

/** How a coefficient of a compartment was come by; nothing where the timeline uses half-times and limits of its own. */
function standing(
  timeline: Timeline,
  compartment: number,
  of: InertGas,
  which: 'halfTime' | 'a' | 'b',
): { readonly obtained: Obtained } | undefined {
  const { variant, first } = timeline.conditions.model;
  if (timeline.compartments !== publishedCompartments(variant, first)) return undefined;
  const row = rows.find((one) => one.compartment === compartmentName(timeline, compartment));
  if (!row) return undefined;
  if (which === 'halfTime') return { obtained: (of === 'N2' ? row.nitrogen : row.helium).obtained.halfTimeMin };
  if (of === 'He') return { obtained: row.helium.obtained[which] };
  return { obtained: row.nitrogen.obtained[which === 'a' ? (`a${variant}` as const) : 'b'] };
}

/** k = ln 2 / half-time, for one gas in one compartment. */
export function rateConstantStep(chain: Chain, timeline: Timeline, compartment: number, of: InertGas): Named {
  const { compartments } = timeline;
  const [halfTimes, k] =
    of === 'N2'
      ? [compartments.nitrogenHalfTimeMin, compartments.nitrogenK]
      : [compartments.heliumHalfTimeMin, compartments.heliumK];
  const known = standing(timeline, compartment, of, 'halfTime');
  const value = {
    ...quantity(halfTimes[compartment]!, 'min'),
    meaning: `half-time of this compartment for ${GAS_NAMES[of]}`,
    within: HALF_TIME_RANGE_MIN,
    ...known,
  } as const;
  const symbol = `t_half_${of}`;
  return chain.add({
    id: `step:k-${of}`,
    title: `rate constant for ${GAS_NAMES[of]}`,
    why: 'In one half-time a compartment closes half of what parts it from the lungs.',
    expression: `log(2) / ${symbol}`,
    symbol: `k_${of}`,
    values: [known ? fromPublished(symbol, value) : fromSetting(symbol, value)],
    result: quantity(k[compartment]!, '1/min'),
    source: SOURCES.limits,
  });
}

/** Tensions of one compartment by their symbols; without helium where it holds none. */
export interface Inert {
  readonly nitrogen: Named;
  readonly helium?: Named;
}

export interface Coefficients {
  readonly a: Named;
  readonly b: Named;
}

/**
 * a and b of a compartment for what it holds: the published ones of nitrogen, or with helium each gas's own weighted by
 * its tension. `suffix` sets their symbols and steps apart where a working needs those of two compartments.
 */
export function coefficientSteps(
  chain: Chain,
  timeline: Timeline,
  compartment: number,
  inert: Inert,
  suffix = '',
): Coefficients {
  return {
    a: coefficient(chain, timeline, compartment, inert, suffix, 'a'),
    b: coefficient(chain, timeline, compartment, inert, suffix, 'b'),
  };
}

function coefficient(
  chain: Chain,
  timeline: Timeline,
  compartment: number,
  { nitrogen, helium }: Inert,
  suffix: string,
  which: 'a' | 'b',
): Named {
  const { nitrogenA, nitrogenB, heliumA, heliumB } = timeline.compartments;
  const [ofNitrogen, ofHelium] =
    which === 'a' ? [nitrogenA[compartment]!, heliumA[compartment]!] : [nitrogenB[compartment]!, heliumB[compartment]!];
  const value = (of: InertGas, symbol: SymbolName) => {
    const known = standing(timeline, compartment, of, which);
    const given = {
      ...quantity(of === 'N2' ? ofNitrogen : ofHelium, which === 'a' ? 'bar' : ''),
      meaning: `this compartment’s ${which} for ${GAS_NAMES[of]}`,
      within: which === 'a' ? A_RANGE_BAR : B_RANGE,
      ...known,
    } as const;
    return known ? fromPublished(symbol, given) : fromSetting(symbol, given);
  };
  // An empty compartment has no mixture to weigh by; the engine takes nitrogen's own there too.
  if (!helium || nitrogen.value.value + helium.value.value === 0) return value('N2', `${which}${suffix}`);
  const symbol = `${which}${suffix}`;
  const own = { N2: value('N2', `${which}_N2${suffix}`), He: value('He', `${which}_He${suffix}`) };
  return chain.add({
    id: `step:${symbol}`,
    title: `this compartment’s ${which} for the mixture in it`,
    why: `Each gas’s own ${which} counts by how much of the gas is dissolved.`,
    expression: `(${own.N2.symbol} * ${nitrogen.symbol} + ${own.He.symbol} * ${helium.symbol}) / (${nitrogen.symbol} + ${helium.symbol})`,
    symbol,
    values: [own.N2, own.He, nitrogen, helium],
    result: quantity(
      mixedCoefficient(nitrogen.value.value, helium.value.value, ofNitrogen, ofHelium),
      which === 'a' ? 'bar' : '',
    ),
    source: SOURCES.limits,
  });
}

/** Nitrogen and helium together; nitrogen itself where there is no helium. */
export function inertStep(
  chain: Chain,
  { nitrogen, helium }: Inert,
  { id, symbol, title }: { id: `step:${string}`; symbol: SymbolName; title: string },
): Named {
  if (!helium) return nitrogen;
  return chain.add({
    id,
    title,
    why: 'The limits count both gases together.',
    expression: `${nitrogen.symbol} + ${helium.symbol}`,
    symbol,
    values: [nitrogen, helium],
    result: quantity(nitrogen.value.value + helium.value.value, 'bar'),
    source: SOURCES.dalton,
  });
}
