import { NOTHING_COUNTS_BAR, OXYGEN_LIMITS } from '../../exposure/oxygen-rates';
import type { Obtained } from '../../../content/published/schema';
import type { ExposureRate } from '../../exposure/exposure-rate';
import { fromPublished, quantity, type Chain } from '../chain';
import { SOURCES } from '../sources';
import type { Named } from '../working';

/** Which of the published limits is meant. */
export type OxygenLimit = 'single' | 'daily';

/** A stretch of oxygen pressure with one rule: from one row of the table to the next, or beyond either end of it. */
export interface Stretch {
  /** Index of the row it begins at; -1 below the first. */
  readonly row: number;
  readonly fromBar: number;
  readonly toBar: number;
}

const STRETCHES: readonly Stretch[] = [
  { row: -1, fromBar: NOTHING_COUNTS_BAR, toBar: OXYGEN_LIMITS[0]!.bar },
  ...OXYGEN_LIMITS.map(({ bar }, row) => ({ row, fromBar: bar, toBar: OXYGEN_LIMITS[row + 1]?.bar ?? Infinity })),
];

/** The stretches that a rise from one pressure to another crosses, each cut to it; one for a single pressure. */
export function stretchesBetween(lowBar: number, highBar: number): Stretch[] {
  if (lowBar === highBar) return [STRETCHES.findLast(({ fromBar }) => lowBar >= fromBar)!];
  return STRETCHES.filter(({ fromBar, toBar }) => fromBar < highBar && toBar > lowBar).map(
    ({ row, fromBar, toBar }) => ({
      row,
      fromBar: Math.max(fromBar, lowBar),
      toBar: Math.min(toBar, highBar),
    }),
  );
}

/** A stretch as a whole, whatever is cut from it. */
export function wholeStretch({ row }: Stretch): Stretch {
  return STRETCHES[row + 1]!;
}

/** Above the last row and below the first the rate is even in pressure; between rows the limit is. */
export function isBetweenRows({ row }: Stretch): boolean {
  return row >= 0 && row < OXYGEN_LIMITS.length - 1;
}

/** A row's pressure and its limit, by their symbols. */
export function rowValues(row: number, of: OxygenLimit): { readonly pressure: Named; readonly limit: Named } {
  const { bar, singleMin, dailyMin, obtained } = OXYGEN_LIMITS[row]!;
  const known =
    of === 'single'
      ? { value: singleMin, obtained: obtained.singleMin }
      : { value: dailyMin, obtained: obtained.dailyMin };
  return {
    pressure: fromPublished(`p_row_${row + 1}`, {
      ...quantity(bar, 'bar'),
      meaning: `oxygen pressure of row ${row + 1} of the table`,
    }),
    limit: fromPublished(`L_row_${row + 1}`, {
      ...quantity(known.value, 'min'),
      meaning: `longest exposure in row ${row + 1} of the table`,
      obtained: known.obtained as Obtained,
    }),
  };
}

export const nothingCounts: Named = fromPublished('p_none', {
  ...quantity(NOTHING_COUNTS_BAR, 'bar'),
  meaning: 'oxygen pressure up to which nothing counts, half an atmosphere',
});

interface LimitNames {
  readonly name: string;
  readonly symbol: string;
  readonly title: string;
}

/** The longest exposure at a pressure, read between two rows of the table or beyond its ends. */
export function limitAtStep(
  chain: Chain,
  of: OxygenLimit,
  rate: ExposureRate,
  pressure: Named,
  stretch: Stretch,
  { name, symbol, title }: LimitNames,
): Named {
  const common = {
    id: `step:limit-${name}`,
    title: `longest exposure ${title}`,
    symbol,
    result: quantity(1 / rate.at(pressure.value.value), 'min'),
    source: SOURCES.oxygenBetweenRows,
    group: 'history',
  } as const;
  const p = pressure.symbol;
  if (stretch.row < 0) {
    const first = rowValues(0, of);
    return chain.add({
      ...common,
      why: 'Below the first row the rate falls evenly to nothing at half an atmosphere.',
      expression: `L_row_1 * (p_row_1 - p_none) / (${p} - p_none)`,
      values: [first.limit, first.pressure, nothingCounts, pressure],
    });
  }
  const beyond = !isBetweenRows(stretch);
  const [one, other] = beyond ? [stretch.row - 1, stretch.row] : [stretch.row, stretch.row + 1];
  const [from, to] = [rowValues(one, of), rowValues(other, of)];
  const values = [from.limit, to.limit, from.pressure, to.pressure, pressure];
  return beyond
    ? chain.add({
        ...common,
        why: 'Above the last row the rate goes on rising as steeply as between the last two.',
        expression: `1 / (1 / ${to.limit.symbol} + (${p} - ${to.pressure.symbol}) * (1 / ${to.limit.symbol} - 1 / ${from.limit.symbol}) / (${to.pressure.symbol} - ${from.pressure.symbol}))`,
        values,
      })
    : chain.add({
        ...common,
        why: 'Between two rows of the table the limit is taken to change evenly.',
        expression: `${from.limit.symbol} + (${p} - ${from.pressure.symbol}) * (${to.limit.symbol} - ${from.limit.symbol}) / (${to.pressure.symbol} - ${from.pressure.symbol})`,
        values,
      });
}
