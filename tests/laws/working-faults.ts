import type { Calculator } from '@/lib/working/calculator';
import type { Working, WorkingStep } from '@/lib/working/working';

/** Where a value of a step may come from, but for an earlier step. */
const ORIGINS: readonly string[] = ['dive', 'setting', 'published', 'common practice', 'search'];

/** What is wrong, in words, with where a working takes its values from and with what its symbols mean. */
export function faultsOfSources({ reading, steps }: Working): string[] {
  const faults: string[] = [];
  const results = new Map<string, WorkingStep>();
  const symbols = new Map<string, string>();
  for (const step of steps) {
    if (results.has(step.id)) faults.push(`${reading}: ${step.id} stands twice`);
    for (const [symbol, value] of Object.entries(step.values)) {
      const wrong = (what: string) => faults.push(`${reading}: in ${step.id} ${symbol} = ${value.value} ${what}`);
      if (value.from.startsWith('step:')) {
        const earlier = results.get(value.from);
        const given = earlier?.symbol === symbol && Object.is(earlier.result.value, value.value);
        if (!given || earlier.result.unit !== value.unit) wrong(`is not what ${value.from} gives`);
      } else if (!ORIGINS.includes(value.from)) wrong(`comes from ${value.from}`);
      const meant = JSON.stringify({ ...value, value: String(value.value) });
      if ((symbols.get(symbol) ?? meant) !== meant) wrong('means two things');
      symbols.set(symbol, meant);
      if (value.within && !(value.value >= value.within[0] && value.value <= value.within[1]))
        wrong('is out of bounds');
    }
    results.set(step.id, step);
  }
  return faults;
}

/** Whether two figures are one but for rounding, as a share of what is above 1. */
export function same(one: number, other: number, rounding: number): boolean {
  return one === other || Math.abs(one - other) <= rounding * Math.max(1, Math.abs(other));
}

export function numbersOf(step: WorkingStep): Record<string, number> {
  return Object.fromEntries(Object.entries(step.values).map(([symbol, { value }]) => [symbol, value]));
}

/** What is wrong, in words, with what the steps say they come to: it is not what the calculator makes of them. */
export function faultsOfSteps(calculator: Calculator, { reading, steps }: Working, rounding: number): string[] {
  return steps.flatMap((step) => {
    const recomputed = calculator.evaluate(step.expression, numbersOf(step));
    const due = step.result.value;
    return same(recomputed, due, rounding) ? [] : [`${reading} ${step.id}: ${recomputed} for ${due}`];
  });
}
