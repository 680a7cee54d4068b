import { accepted, refused, type Parsed } from '../../quantity/parsed';
import type { Calculator } from '../calculator';
import { REMARKS } from '../remarks';
import type { Search, StepId, SymbolName, Working, WorkingStep, WorkingValue } from '../working';
import { SEARCH_STEP_MIN, SEARCH_END_MIN } from '../../ascent/no-stop';

/**
 * What would follow if values of a working were others: each change by its symbol, wherever that stands. The steps that
 * hang on a change are worked out anew, a search among them is made anew, and the rest stay the same objects. The dive is
 * not touched. Refuses a symbol that is not there or not for changing, and a number that makes no sense in its place.
 */
export function carryThrough(
  calculator: Calculator,
  working: Working,
  changes: Readonly<Record<SymbolName, number>>,
): Parsed<Working> {
  for (const [symbol, number] of Object.entries(changes)) {
    const refusal = refusedChange(working, symbol, number);
    if (refusal) return refusal;
  }
  const found =
    working.search && !Object.hasOwn(changes, working.search.symbol)
      ? searched(calculator, working, working.search, changes)
      : {};
  const steps = recomputed(calculator, working.steps, { ...changes, ...found });
  const last = steps.at(-1);
  if (!last) return accepted(working);
  const { value } = last.result;
  // The table tells of the dive as it is; what sixteen compartments would do under the change is not worked out.
  const { table: _dropped, ...kept } = working;
  return accepted({
    ...kept,
    steps,
    answer: { ...working.answer, value, text: Number.isNaN(value) ? REMARKS.noAnswer : REMARKS.whatIf },
  });
}

/** The values of a working that a learner may change, each once, by symbol. */
export function changeableValues(working: Working): ReadonlyMap<SymbolName, WorkingValue> {
  const values = new Map<SymbolName, WorkingValue>();
  for (const step of working.steps) {
    for (const [symbol, value] of Object.entries(step.values)) if (value.changeable) values.set(symbol, value);
  }
  return values;
}

function refusedChange(working: Working, symbol: SymbolName, number: number): ReturnType<typeof refused> | undefined {
  const known = working.steps.some((step) => Object.hasOwn(step.values, symbol));
  if (!known) return refused(`There is no ${symbol} in this working.`, 'Choose one of the numbers in it.');
  const value = changeableValues(working).get(symbol);
  if (!value)
    return refused(`${symbol} follows from the rest, or is a constant.`, 'Change one of the numbers it comes from.');
  const [least, most] = value.within ?? [-Infinity, Infinity];
  if (!(number >= least && number <= most)) {
    return refused(
      `${number} makes no sense here: ${value.meaning}.`,
      `Write a number from ${least} to ${most}${value.unit === '' ? '' : ` ${value.unit}`}.`,
    );
  }
  return undefined;
}

/** The steps with changed values put in; those that hang on none of them as they were. */
function recomputed(
  calculator: Calculator,
  steps: readonly WorkingStep[],
  changes: Readonly<Record<SymbolName, number>>,
): WorkingStep[] {
  const results = new Map<StepId, number>();
  return steps.map((step) => {
    const values: Record<SymbolName, WorkingValue> = {};
    let changed = false;
    for (const [symbol, value] of Object.entries(step.values)) {
      const number = changedNumber(symbol, value, changes, results);
      values[symbol] = number === undefined ? value : { ...value, value: number };
      if (number !== undefined) changed = true;
    }
    if (!changed) return step;
    const result = { ...step.result, value: calculator.evaluate(step.expression, numbersOf(values)) };
    results.set(step.id, result.value);
    return { ...step, values, result };
  });
}

function changedNumber(
  symbol: SymbolName,
  value: WorkingValue,
  changes: Readonly<Record<SymbolName, number>>,
  results: ReadonlyMap<StepId, number>,
): number | undefined {
  if (value.from.startsWith('step:')) return results.get(value.from as StepId);
  return Object.hasOwn(changes, symbol) ? changes[symbol] : undefined;
}

function numbersOf(values: Readonly<Record<SymbolName, WorkingValue>>): Record<SymbolName, number> {
  return Object.fromEntries(Object.entries(values).map(([symbol, { value }]) => [symbol, value]));
}

/** Makes a working's search anew under changed values. */
function searched(
  calculator: Calculator,
  working: Working,
  search: Search,
  changes: Readonly<Record<SymbolName, number>>,
): Record<SymbolName, number> {
  const end = working.steps.findIndex(({ id }) => id === search.until) + 1;
  const steps = recomputed(calculator, working.steps.slice(0, end), changes);
  const trials = stepsThatHangOn(steps, search.symbol);
  const reached = (minutes: number) =>
    recomputed(calculator, trials, { [search.symbol]: minutes }).at(-1)!.result.value >= 0;
  if (reached(search.fromMin)) return { [search.symbol]: search.fromMin };
  const stepMin = search.stepMin ?? SEARCH_STEP_MIN;
  for (let before = search.fromMin; before < search.horizonMin; before += stepMin) {
    const after = Math.min(before + stepMin, search.horizonMin);
    if (reached(after)) return { [search.symbol]: halved(reached, before, after) };
  }
  return { [search.symbol]: search.horizonMin };
}

function stepsThatHangOn(steps: readonly WorkingStep[], symbol: SymbolName): WorkingStep[] {
  const hanging = new Set<string>();
  return steps.filter(({ id, values }) => {
    const hangs = Object.hasOwn(values, symbol) || Object.values(values).some(({ from }) => hanging.has(from));
    if (hangs) hanging.add(id);
    return hangs;
  });
}

function halved(reached: (minutes: number) => boolean, notYet: number, already: number): number {
  let before = notYet;
  let after = already;
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (reached(middle)) after = middle;
    else before = middle;
  }
  return after;
}
