import type { Obtained } from '../../content/published/schema';
import type { Deciding, Named, Quantity, SymbolName, Unit, WorkingStep, WorkingValue } from './working';

/** A working's steps while they are being put together. */
export interface Chain {
  readonly steps: readonly WorkingStep[];
  /** Adds a step and hands its result on for later ones. */
  add(step: NewStep): Named;
}

/** A step with its values as a list, each under its symbol. */
export interface NewStep extends Omit<WorkingStep, 'values'> {
  readonly values: readonly Named[];
}

/** Throws if two values of a step share a symbol or a step's id is taken: a working must say what it means. */
export function newChain(): Chain {
  const steps: WorkingStep[] = [];
  return {
    steps,
    add({ values, ...step }) {
      if (steps.some(({ id }) => id === step.id)) throw new Error(`the working has two steps called ${step.id}`);
      const bySymbol: Record<SymbolName, WorkingValue> = {};
      for (const { symbol, value } of values) {
        if (bySymbol[symbol]) throw new Error(`${step.id} has two values called ${symbol}`);
        bySymbol[symbol] = value;
      }
      steps.push({ ...step, values: bySymbol });
      return { symbol: step.symbol, value: { ...step.result, meaning: step.title, from: step.id, changeable: false } };
    },
  };
}

interface Given extends Quantity {
  readonly meaning: string;
  /** The numbers that make sense in its place; where left out it is not for changing. */
  readonly within?: readonly [number, number];
  readonly obtained?: Obtained;
  readonly at?: Quantity;
}

const given =
  (from: 'dive' | 'setting' | 'published' | 'common practice' | 'search') =>
  (symbol: SymbolName, value: Given): Named => ({
    symbol,
    value: { ...value, from, changeable: value.within !== undefined },
  });

export const fromDive = given('dive');
export const fromSetting = given('setting');
export const fromPublished = given('published');
export const fromPractice = given('common practice');
export const fromSearch = given('search');

/** What decides an answer, before it: results of steps, each with a word. What no step of the working gives is left out. */
export function deciding(chain: Chain, ...told: readonly (readonly [Named, string])[]): readonly Deciding[] {
  return told.flatMap(([{ value }, word]) => {
    const step = chain.steps.find(({ id }) => id === value.from)?.id;
    return step ? [{ step, word }] : [];
  });
}

/** A value with its unit. */
export function quantity(value: number, unit: Unit): Quantity {
  return { value, unit };
}
