import type { Dive } from '../../dive/dive';
import { METRES_PER_FOOT } from '../../quantity/length';
import type { UnitSystem } from '../../quantity/unit-system';
import { evaluateComparison, evaluateTruth } from '../expression/evaluate';
import {
  MOMENT_MEANINGS,
  type Comparison,
  type ComparisonSign,
  type Expression,
  type FactArgument,
  type FactCall,
  type WrittenMoment,
} from '../expression/expression';
import { factNamed } from '../facts/facts';
import { notKept, type Freedom } from './kept-settings';
import { parseExpression } from '../expression/parse-expression';
import { printValue } from '../expression/print-value';
import { formOf } from '../expression/template';
import type { World } from '../expression/world';
import { capital } from '../../quantity/capital';

/** One part of a goal, and how it stands. */
interface Clause {
  readonly met: boolean;
  /** What is wanted and what is so, in a sentence. */
  readonly text: string;
}

export interface GoalState {
  readonly met: boolean;
  /** The parts that must all be met, in the order they are written. */
  readonly clauses: readonly Clause[];
}

/** How a goal stands for a dive that was changed from another, of which only some settings may be changed. */
export function goalStateOf(
  { goal, free }: { readonly goal: string; readonly free: readonly Freedom[] },
  begun: Dive,
  world: World,
  system: UnitSystem,
): GoalState {
  const state = goalState(goal, world, system);
  const changed = notKept(begun, world.subject.dive, free);
  if (changed === undefined) return state;
  return { met: false, clauses: [...state.clauses, { met: false, text: changed }] };
}

/** How a goal stands for a dive, and in words what is still missing. An expression that makes no sense is never met. */
export function goalState(source: string, world: World, system: UnitSystem): GoalState {
  const parsed = parseExpression(source);
  if (!parsed.ok) return { met: false, clauses: [{ met: false, text: parsed.what }] };
  const parts = parsed.value.is === 'both' ? parsed.value.of : [parsed.value];
  const clauses = parts.map((part) => clauseOf(part, world, system));
  return { met: clauses.every(({ met }) => met), clauses };
}

function clauseOf(part: Expression, world: World, system: UnitSystem): Clause {
  const so = evaluateTruth(part, world);
  if (!so.ok) return { met: false, text: so.what };
  return { met: so.value || metInFeet(part, world, system), text: capital(say(part, world, system)) };
}

/** In feet a depth or a rate is held against the whole feet that are asked for in words: 33 m are told as 108 ft. */
function metInFeet(part: Expression, world: World, system: UnitSystem): boolean {
  if (system === 'metric' || part.is !== 'comparison') return false;
  const compared = evaluateComparison(part, world);
  if (!compared.ok) return false;
  const { left, right } = compared.value;
  if (left.dimension !== 'depth' && left.dimension !== 'rate') return false;
  const feet = ({ value }: { readonly value: number }) => Math.round(value / METRES_PER_FOOT);
  return (part.sign === '>=' && feet(left) >= feet(right)) || (part.sign === '<=' && feet(left) <= feet(right));
}

function say(part: Expression, world: World, system: UnitSystem): string {
  if (part.is === 'comparison') return sayComparison(part, world, system);
  if (part.is === 'either')
    return `One of these has to be so: ${part.of.map((one) => say(one, world, system).replace(/\.$/, '')).join('; or ')}.`;
  if (part.is === 'both')
    return `All of these have to be so: ${part.of.map((one) => say(one, world, system).replace(/\.$/, '')).join('; and ')}.`;
  if (part.is === 'not') return `This may not be so: ${say(part.of, world, system)}`;
  return 'This has to be so.';
}

const WANTED: Readonly<Record<ComparisonSign, string>> = {
  '==': 'asked',
  '!=': 'anything asked but',
  '<': 'asked less than',
  '<=': 'asked at most',
  '>': 'asked more than',
  '>=': 'asked at least',
};

function sayComparison(comparison: Comparison, world: World, system: UnitSystem): string {
  const compared = evaluateComparison(comparison, world);
  if (!compared.ok) return compared.what;
  const { left, right } = compared.value;
  const form = (asked?: string) => formOf(comparison.left, asked) ?? formOf(comparison.right, asked);
  const format = form();
  let is = printValue(left, system, format);
  let wanted = printValue(right, system, format);
  // Rounding may hide the difference that decides.
  if (is === wanted && !compared.value.so) {
    const finer =
      left.dimension === 'time'
        ? 'clock'
        : left.dimension === 'percent'
          ? '% 1'
          : left.dimension === 'depth'
            ? 'm 1'
            : undefined;
    is = printValue(left, system, form(finer));
    wanted = printValue(right, system, form(finer));
  }
  if (comparison.sign === '==' && comparison.right.is === 'amount' && right.value === 0) {
    const noun = bareNoun(comparison.left, world, system);
    return compared.value.so ? `${noun}: none, as asked.` : `${noun}: ${is}, asked none.`;
  }
  const other = comparison.right.is === 'amount' ? wanted : `${wanted}, ${nounOf(comparison.right, world, system)}`;
  return `${bareNoun(comparison.left, world, system)}: ${is}, ${WANTED[comparison.sign]} ${other}.`;
}

/** A noun at the head of a line that has to be short: without its article. */
function bareNoun(expression: Expression, world: World, system: UnitSystem): string {
  return nounOf(expression, world, system).replace(/^the /, '');
}

/** An expression as a noun: "the no-stop time when you leave the bottom". */
function nounOf(expression: Expression, world: World, system: UnitSystem): string {
  if (expression.is === 'fact' || expression.is === 'name') {
    const fact = factNamed(expression.name);
    if (!fact) return `“${expression.name}”`;
    if (expression.is === 'name') return fact.noun;
    return `${extremeWord(expression)}${withArguments(fact.noun, expression, world, system)}${whenOf(expression)}${ofWhat(expression)}`;
  }
  return 'what is asked for';
}

function extremeWord({ extreme }: FactCall): string {
  return extreme ? `the ${extreme} of ` : '';
}

function withArguments(noun: string, { arguments: given }: FactCall, world: World, system: UnitSystem): string {
  return given.reduce<string>((text, one, i) => text.replace(`{${i + 1}}`, argumentText(one, world, system)), noun);
}

function argumentText(given: FactArgument, world: World, system: UnitSystem): string {
  if (given.is === 'event') return given.name.replaceAll('-', ' ');
  if (given.is === 'amount') return printValue(given, system);
  const value = given.is === 'name' ? world.values.get(given.name) : undefined;
  return value ? printValue(value, system) : 'it';
}

const WHEN: Readonly<Record<keyof typeof MOMENT_MEANINGS, string>> = {
  start: 'when you leave the surface',
  arrival: 'when you reach your greatest depth',
  leaving: 'when you leave the bottom',
  surfacing: 'when you surface',
  end: 'at the end',
};

function whenOf({ at }: FactCall): string {
  return at ? ` ${momentText(at)}` : '';
}

function momentText(at: WrittenMoment): string {
  if (at.is === 'named') return WHEN[at.name];
  if (at.is === 'event') return `at the first “${at.name.replaceAll('-', ' ')}”`;
  const minutes =
    at.minutes.is === 'amount'
      ? printValue({ value: at.minutes.value, dimension: 'time' }, 'metric', 'clock')
      : 'some time';
  if (at.is === 'time') return `at ${minutes}`;
  return `${minutes} ${at.direction > 0 ? 'after' : 'before'} ${momentText(at.from).replace(/^(at|when) /, '')}`;
}

function ofWhat({ dive, unit }: FactCall): string {
  return `${dive === undefined ? '' : ` on dive ${dive}`}${unit === undefined ? '' : `, as ${unit} has it`}`;
}
