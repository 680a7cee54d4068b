import type { Dive } from '@/lib/dive/dive';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { drawQuestion, type DrawnQuestion } from '@/lib/lesson/questions/drawn-question';
import { goalStateOf, type GoalState } from '@/lib/lesson/questions/goal';
import {
  judgeCondition,
  judgeNumber,
  numberAsked,
  numbersToPick,
  replyTo,
  rightOption,
  type NumberAsked,
} from '@/lib/lesson/questions/judge';
import { seeded, shuffled } from '@/lib/quantity/seeded';
import { subjectOf } from '@/lib/lesson/questions/subject';
import { printBoth } from '@/lib/lesson/expression/template';
import type { World } from '@/lib/lesson/expression/world';
import { fillIn } from '../fill';
import { valueHtml } from '../fillable';
import { worldsOf } from './predict-answers';
import type { CheckStep, Html, PreparedLesson, PreparedOption, PreparedQuestion, TryStep } from '../prepared';

/*
 * What a lesson needs the engine for while it is taken. It is loaded when the first step asks for it, so that a lesson
 * opens at once.
 */

export * from './predict-answers';

/** A question with its values drawn, ready to be answered. */
export interface AskedQuestion {
  readonly seed: number;
  readonly ask: Html;
  readonly after: Html | undefined;
  /** Answers in words or numbers to choose from; undefined where a number is to be typed. */
  readonly options: readonly PreparedOption[] | undefined;
  readonly number: NumberAsked | undefined;
  /** The number as it is read. */
  readonly numberHtml: Html | undefined;
  /** The dive it is about, if it has its own. */
  readonly script: string | undefined;
}

const drawnFor = new WeakMap<AskedQuestion, DrawnQuestion>();

/** Draws a question by a seed. Throws where the lesson is faulty, which the check of lessons finds first. */
export function askQuestion(
  lesson: PreparedLesson,
  step: CheckStep,
  prepared: PreparedQuestion,
  seed: number,
): AskedQuestion {
  const { question } = prepared;
  const drawn = drawQuestion(question, seed, worldsOf(lesson), step.script);
  if (!drawn.ok) throw new Error(drawn.what);
  const { world, script } = drawn.value;
  const number = question.number && numberAsked(question.number, world);
  if (number && !number.ok) throw new Error(number.what);
  const asked: AskedQuestion = {
    seed,
    script,
    ask: fillIn(prepared.ask, world),
    after: prepared.after && fillIn(prepared.after, world),
    options: optionsOf(prepared, world, seed),
    number: number?.value,
    numberHtml: number && valueHtml(printBoth(number.value.answer, number.value.format)),
  };
  drawnFor.set(asked, drawn.value);
  return asked;
}

function optionsOf(
  { question, choice, pick }: PreparedQuestion,
  world: World,
  seed: number,
): PreparedOption[] | undefined {
  const chance = seeded(seed + 1);
  if (question.choice && choice) {
    const right = rightOption(question.choice, world);
    const options = choice.map(({ text, because }, index) => ({
      html: fillIn(text, world),
      right: right.ok && index === right.value,
      because: fillIn(because, world),
    }));
    return shuffled(options, chance);
  }
  if (!question.pick || !pick) return undefined;
  const numbers = numbersToPick(question.pick, world);
  if (!numbers.ok) throw new Error(numbers.what);
  const because = new Map([
    [question.pick.because, pick.because],
    ...question.pick.others.map((other, i) => [other.because, pick.others[i]!] as const),
  ]);
  return shuffled(
    numbers.value.map((one) => ({
      html: valueHtml(one.printed),
      right: one.right,
      because: fillIn(because.get(one.because)!, world),
    })),
    chance,
  );
}

export interface NumberVerdict {
  readonly right: boolean;
  readonly because: Html | undefined;
  /** The answer as it is read. */
  readonly answer: Html;
}

export function answerNumber(
  asked: AskedQuestion,
  { question, number }: PreparedQuestion,
  given: number,
): NumberVerdict {
  const { world } = drawnFor.get(asked)!;
  const judged = judgeNumber(question.number!, asked.number!, given, world);
  const reply = judged.right ? undefined : (replyTo(number!.wrong, judged.world) ?? number!.otherwise);
  return { right: judged.right, because: reply && fillIn(reply, judged.world), answer: asked.numberHtml! };
}

export interface GoalStanding extends GoalState {
  readonly hints: readonly Html[];
}

/** How a learner's dive stands against the goal. */
export function goalStanding(lesson: PreparedLesson, step: TryStep, dive: Dive, units: UnitSystem): GoalStanding {
  const own = worldsOf(lesson);
  const world = own.aboutDive(subjectOf(dive, own.rulesOf(step.script)));
  const state = goalStateOf(step, own.about(step.script).subject.dive, world, units);
  const hints = state.met
    ? []
    : step.hints.filter(({ when }) => {
        const so = judgeCondition(when, world);
        return so.ok && so.value;
      });
  return { ...state, hints: hints.map(({ because }) => fillIn(because, world)) };
}
