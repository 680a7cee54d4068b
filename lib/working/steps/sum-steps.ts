import { quantity, type Chain, type NewStep } from '../chain';
import { SOURCES } from '../sources';
import type { Named, SymbolName, Unit } from '../working';

/** So many terms are added up in one step. */
const TERMS_A_STEP = 10;

interface SumNames {
  readonly id: string;
  readonly symbol: SymbolName;
  readonly title: string;
  readonly why: string;
  readonly unit: Unit;
  readonly group?: 'history';
}

/** Adds terms up, some at a time; `total` is the engine's own figure for the whole. */
export function sumSteps(
  chain: Chain,
  terms: readonly Named[],
  { id, symbol, title, why, unit, group }: SumNames,
  total: number,
): Named {
  const folded: Pick<NewStep, 'group'> = group ? { group } : {};
  let rest = [...terms];
  let part = 0;
  while (rest.length > TERMS_A_STEP) {
    part += 1;
    const taken = rest.slice(0, TERMS_A_STEP);
    const sum = chain.add({
      id: `step:${id}-part-${part}`,
      title: `${title}, its first terms`,
      why,
      expression: taken.map((term) => term.symbol).join(' + '),
      symbol: `${symbol}_part_${part}`,
      values: taken,
      result: quantity(
        taken.reduce((before, { value }) => before + value.value, 0),
        unit,
      ),
      source: SOURCES.arithmetic,
      group: 'history',
    });
    rest = [sum, ...rest.slice(TERMS_A_STEP)];
  }
  return chain.add({
    id: `step:${id}`,
    title,
    why,
    expression: rest.map((term) => term.symbol).join(' + '),
    symbol,
    values: rest,
    result: quantity(total, unit),
    source: SOURCES.arithmetic,
    ...folded,
  });
}
