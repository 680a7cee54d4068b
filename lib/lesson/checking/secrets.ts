import type { DrawAnswer, NumberAnswer, Option } from '../questions/answer';
import { parseExpression } from '../expression/parse-expression';
import { printBoth, type Filled } from '../expression/template';
import type { Amount, FactRead, World } from '../expression/world';
import { drawAsked } from '../questions/drawing-question';
import { judgeAmount, judgeCondition, numberAsked, rightOption } from '../questions/judge';
import type { StepOf } from '../step';
import { SAME_PART } from '../expression/evaluate';

/** Facts of the dive's shape and of its settings: a script says them, so no question keeps them back. */
const SAID_BY_THE_SCRIPT = new Set([
  'depthM',
  'maxDepthM',
  'averageDepthM',
  'bottomMin',
  'runMin',
  'ascentMin',
  'fastestAscentMMin',
  'safetyStopMin',
  'minutesBetween',
  'surfaceIntervalMin',
  'sinceSurfacingMin',
  'diveCount',
  'gasOxygenPercent',
  'gasHeliumPercent',
  'altitudeM',
  'gfLowPercent',
  'gfHighPercent',
  'firstGasOxygenPercent',
  'firstGasHeliumPercent',
]);

/** What a choice may be reasoned from: nobody is told the answer by them. */
const WORKED_WITH = new Set(['pressureAtBar', 'surfaceBar', 'atmosphereBar', 'halfTimeMin', 'heliumHalfTimeMin']);

/** The facts an expression reads. */
export function readsOf(source: string, world: World): FactRead[] {
  const reads: FactRead[] = [];
  judgeAmount(source, { ...world, noted: (read) => reads.push(read) });
  return reads;
}

/**
 * What a question keeps back until it is answered: a value, or the facts that decide between options (all of them told is
 * the answer told); a number that is worked out of several facts; a stretch of a curve.
 */
export type Secret = (
  | { readonly is: 'facts'; readonly reads: readonly FactRead[]; readonly within: number }
  | { readonly is: 'sum'; readonly answer: Amount; readonly within: number; readonly names: ReadonlySet<string> }
  | { readonly is: 'curve'; readonly read: FactRead; readonly fromS: number; readonly toS: number }
) & {
  /** The number as it is read, where one is asked for. */
  readonly printed?: Filled;
};

/** What a prediction asks for; undefined where it keeps nothing back, or is faulty. */
export function secretOf(step: StepOf<'predict'>, world: World): Secret | undefined {
  if (step.draw) return curveOf(step.draw, world);
  if (step.number) return numberOf(step.number, world);
  return step.choice && choiceOf(step.choice, world);
}

function kept(reads: readonly FactRead[]): FactRead[] {
  return reads.filter(({ name }) => !SAID_BY_THE_SCRIPT.has(name));
}

function numberOf(question: NumberAnswer, world: World): Secret | undefined {
  const asked = numberAsked(question, world);
  const parsed = parseExpression(question.answer);
  if (!asked.ok || !parsed.ok) return undefined;
  const reads = kept(readsOf(question.answer, world));
  const { answer, within, format } = asked.value;
  if (reads.length === 0) return undefined;
  const printed = printBoth(answer, format);
  if (parsed.value.is === 'fact' || parsed.value.is === 'name') return { is: 'facts', reads, within, printed };
  return { is: 'sum', answer, within, names: new Set(reads.map(({ name }) => name)), printed };
}

function choiceOf(options: readonly Option[], world: World): Secret | undefined {
  const right = rightOption(options, world);
  const holds = right.ok ? options[right.value]!.holds : undefined;
  if (holds === undefined) return undefined;
  const reads: FactRead[] = [];
  judgeCondition(holds, { ...world, noted: (read) => reads.push(read) });
  const secret = kept(reads).filter(({ name }) => !WORKED_WITH.has(name));
  return secret.length === 0 ? undefined : { is: 'facts', reads: secret, within: 0 };
}

function curveOf(question: DrawAnswer, world: World): Secret | undefined {
  const asked = drawAsked(question, world);
  if (!asked.ok) return undefined;
  const { fromS, toS } = asked.value;
  const [read] = readsOf(`${question.curve} at ${fromS / 60} min`, world);
  return read && { is: 'curve', read, fromS, toS };
}

/** Closer than this two moments are one, s. */
export const ONE_MOMENT_S = 1.5;

/** Whether two facts were asked of the same thing, but for the moment. */
export function sameFact(one: FactRead, other: FactRead): boolean {
  return (
    one.name === other.name &&
    one.event === other.event &&
    one.arguments.length === other.arguments.length &&
    one.arguments.every((value, i) => value === other.arguments[i])
  );
}

/** Whether two facts were asked for at one moment. */
export function sameMoment(one: FactRead, other: FactRead): boolean {
  if (one.atS === undefined || other.atS === undefined) return one.atS === other.atS && one.dive === other.dive;
  return Math.abs(one.atS - other.atS) < ONE_MOMENT_S;
}

/** Whether a fact that is told is the one asked for, or reads like it on the same dive. */
export function tellsFact(told: FactRead, asked: FactRead, within: number): boolean {
  if (!sameFact(told, asked)) return false;
  if (sameMoment(told, asked) && (told.view === asked.view || sameSettings(told, asked))) return true;
  return told.view === asked.view && within > 0 && Math.abs(told.value - asked.value) <= within;
}

/** Whether two dives of a lesson are one up to here: the same limits and gas, and the same value to the last digit. */
function sameSettings({ view: one, value }: FactRead, { view: other, value: otherValue }: FactRead): boolean {
  if (one !== one.subject.truth || other !== other.subject.truth) return false;
  const [settings, otherSettings] = [one, other].map(({ subject }) =>
    JSON.stringify({ ...subject.dive.settings, setups: [], supply: undefined }),
  );
  return settings === otherSettings && Math.abs(value - otherValue) <= Math.abs(value) * SAME_PART;
}
