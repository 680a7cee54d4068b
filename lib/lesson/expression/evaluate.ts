import { refused, type Refusal } from '../../quantity/parsed';
import {
  DIMENSION_UNITS,
  DIMENSION_WORDS,
  isNumber,
  product,
  productScale,
  quotient,
  type Dimension,
} from './dimension';
import type { Comparison, ComparisonSign, Expression, Place } from './expression';
import { factValue } from '../facts/fact-value';
import { NoValue } from '../facts/fact';
import type { Amount, World } from './world';

/** What an expression comes to: an amount, or whether something is so. */
export type Outcome =
  | ({
      readonly is: 'amount';
      /** A plain number without a unit, which takes its neighbour's. */ readonly bare: boolean;
    } & Amount)
  | { readonly is: 'truth'; readonly value: boolean };

/** A refusal to evaluate: the expression is wrong (`wording`), or the dive has no such value (`no value`). */
export interface Unanswered extends Refusal {
  readonly cause: 'wording' | 'no value';
}

export type Evaluated<T> = { readonly ok: true; readonly value: T } | Unanswered;

class Stop extends Error {
  constructor(readonly refusal: Unanswered) {
    super(refusal.what);
  }
}

/** What is wrong with an expression, and how to mend it. */
export function wording(what: string, mend: string): Extract<Evaluated<never>, { ok: false }> {
  return { ...refused(what, mend), cause: 'wording' };
}

/** Ends an evaluation because the expression says something that makes no sense. */
export function stopAt(place: Place, what: string, mend: string): never {
  throw new Stop({ ...refused(what, mend, place), cause: 'wording' });
}

/** Values closer than this part of themselves are equal: far below what anyone reads, far above rounding. */
export const SAME_PART = 1e-9;

/** Works an expression out. All of it is looked at, so that a mistake is found wherever it stands. */
export function evaluate(expression: Expression, world: World): Evaluated<Outcome> {
  return attempted(() => outcomeOf(expression, world));
}

/** The amount an expression comes to. */
export function evaluateAmount(expression: Expression, world: World): Evaluated<Amount> {
  return attempted(() => {
    const { value, dimension } = amountOf(expression, world);
    if (Number.isNaN(value))
      throw new NoValue('This has no value: it takes something without end from something without end.');
    return { value, dimension };
  });
}

/** Whether a condition is so. */
export function evaluateTruth(expression: Expression, world: World): Evaluated<boolean> {
  return attempted(() => truthOf(expression, world));
}

/** An amount that must be of one kind, such as a time; a bare number is taken in that kind's unit. */
export function evaluateAs(expression: Expression, world: World, dimension: Dimension): Evaluated<number> {
  return attempted(() => asDimension(amountOf(expression, world), dimension, expression.place));
}

/** What some work over facts comes to, or why it cannot be done. */
export function attempted<T>(work: () => T): Evaluated<T> {
  try {
    return { ok: true, value: work() };
  } catch (stop) {
    if (stop instanceof Stop) return stop.refusal;
    if (stop instanceof NoValue)
      return { ...refused(stop.message, 'Ask for something this dive has.'), cause: 'no value' };
    throw stop;
  }
}

export type AmountOutcome = Extract<Outcome, { is: 'amount' }>;

/** The amount an expression comes to in a world. Stops the evaluation where it is a condition. */
export function amountOf(expression: Expression, world: World): AmountOutcome {
  const outcome = outcomeOf(expression, world);
  if (outcome.is === 'truth')
    stopAt(expression.place, 'This is a condition where a number is needed.', 'Take the comparison out.');
  return outcome;
}

/**
 * The value of an amount where a dimension is needed; a bare number takes it on. Stops the evaluation on any other
 * dimension.
 */
export function asDimension(amount: AmountOutcome, dimension: Dimension, place: Place): number {
  if (amount.bare || amount.dimension === dimension || (isNumber(amount.dimension) && isNumber(dimension)))
    return amount.value;
  const unit = DIMENSION_UNITS[dimension];
  return stopAt(
    place,
    `This is ${DIMENSION_WORDS[amount.dimension]} where ${DIMENSION_WORDS[dimension]} is needed.`,
    unit ? `Write a value in ${unit}.` : 'Write a plain number.',
  );
}

function truthOf(expression: Expression, world: World): boolean {
  const outcome = outcomeOf(expression, world);
  if (outcome.is === 'amount')
    stopAt(
      expression.place,
      'This is a number where a condition is needed.',
      'Compare it with something, such as >= 30.',
    );
  return outcome.value;
}

function outcomeOf(expression: Expression, world: World): Outcome {
  switch (expression.is) {
    case 'amount':
      return { ...expression, is: 'amount' };
    case 'name':
    case 'fact':
      return factValue(expression, world);
    case 'negative': {
      const of = amountOf(expression.of, world);
      return { ...of, value: -of.value };
    }
    case 'arithmetic':
      return arithmetic(expression, world);
    case 'function':
      return functionOf(expression, world);
    case 'comparison':
      return { is: 'truth', value: compares(expression, world).so };
    case 'both':
      return { is: 'truth', value: expression.of.map((part) => truthOf(part, world)).every(Boolean) };
    case 'either':
      return { is: 'truth', value: expression.of.map((part) => truthOf(part, world)).some(Boolean) };
    case 'not':
      return { is: 'truth', value: !truthOf(expression.of, world) };
  }
}

function arithmetic(
  { sign, left, right, place }: Extract<Expression, { is: 'arithmetic' }>,
  world: World,
): AmountOutcome {
  const one = amountOf(left, world);
  const other = amountOf(right, world);
  const bare = one.bare && other.bare;
  if (sign === '+' || sign === '-') {
    const dimension = common(one, other, place, sign === '+' ? 'adds' : 'subtracts');
    return { is: 'amount', value: sign === '+' ? one.value + other.value : one.value - other.value, dimension, bare };
  }
  const dimension = sign === '*' ? product(one.dimension, other.dimension) : quotient(one.dimension, other.dimension);
  if (!dimension) {
    stopAt(
      place,
      `No unit is known here for ${DIMENSION_WORDS[one.dimension]} ${sign === '*' ? 'times' : 'divided by'} ${DIMENSION_WORDS[other.dimension]}.`,
      'Multiply and divide by plain numbers, or divide like by like.',
    );
  }
  if (sign === '/' && other.value === 0) throw new NoValue('This divides by nothing.');
  const value =
    sign === '*' ? one.value * other.value * productScale(one.dimension, other.dimension) : one.value / other.value;
  return { is: 'amount', value, dimension, bare };
}

/** The kind both amounts are of; a bare number takes the other's. */
function common(one: AmountOutcome, other: AmountOutcome, place: Place, does: string): Dimension {
  if (one.dimension === other.dimension || other.bare) return one.dimension;
  if (one.bare) return other.dimension;
  if (isNumber(one.dimension) && isNumber(other.dimension)) return 'plain';
  return stopAt(
    place,
    `This ${does} ${DIMENSION_WORDS[one.dimension]} and ${DIMENSION_WORDS[other.dimension]}.`,
    'Use values of one kind.',
  );
}

function functionOf({ name, of, place }: Extract<Expression, { is: 'function' }>, world: World): AmountOutcome {
  const [first, ...others] = of.map((one) => amountOf(one, world));
  const whole = others.reduce<AmountOutcome>(
    (sum, one) => ({
      is: 'amount',
      value: (name === 'min' ? Math.min : Math.max)(sum.value, one.value),
      dimension: common(sum, one, place, 'compares'),
      bare: sum.bare && one.bare,
    }),
    first!,
  );
  if (name === 'min' || name === 'max') return whole;
  // A value a rounding error below a whole number counts as that number.
  const slack = Math.max(1, Math.abs(whole.value)) * SAME_PART;
  const work = {
    abs: Math.abs,
    round: Math.round,
    floor: (x: number) => Math.floor(x + slack),
    ceil: (x: number) => Math.ceil(x - slack),
  }[name];
  return { ...whole, value: work(whole.value) };
}

/** A comparison worked out, with both sides. */
export interface Compared {
  readonly so: boolean;
  readonly left: Amount;
  readonly right: Amount;
}

/**
 * Both sides of a comparison in one dimension, and whether it holds. Stops the evaluation where they have none in
 * common.
 */
function compares({ sign, left, right, place }: Comparison, world: World): Compared {
  const one = amountOf(left, world);
  const other = amountOf(right, world);
  const dimension = common(one, other, place, 'compares');
  return {
    so: holds(sign, one.value, other.value),
    left: { value: one.value, dimension },
    right: { value: other.value, dimension },
  };
}

/** A comparison worked out, or why it cannot be. */
export function evaluateComparison(comparison: Comparison, world: World): Evaluated<Compared> {
  return attempted(() => compares(comparison, world));
}

function holds(sign: ComparisonSign, one: number, other: number): boolean {
  // What has no end is like nothing but itself: a part of it would be without end too.
  const bounded = Number.isFinite(one) && Number.isFinite(other);
  const same =
    one === other || (bounded && Math.abs(one - other) <= Math.max(1, Math.abs(one), Math.abs(other)) * SAME_PART);
  if (sign === '==') return same;
  if (sign === '!=') return !same;
  if (sign === '<') return one < other && !same;
  if (sign === '>') return one > other && !same;
  return sign === '<=' ? one < other || same : one > other || same;
}
