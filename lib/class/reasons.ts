import { isClose } from '../lesson/questions/sketch';
import type { ClassAnswer } from './answer';
import type { Ask, Truth } from './ask';
import type { Reasons } from './lesson-ask';
import type { Words } from './words';
import { isWithin } from '../lesson/questions/within';

/** Whether an answer is right; undefined where nobody has said what is. */
export function isRight(answer: ClassAnswer, truth: Truth): boolean | undefined {
  switch (truth.by) {
    case 'choice':
      return truth.right === undefined ? undefined : answer.by === 'choice' && answer.option === truth.right;
    case 'number':
      return answer.by === 'number' && isWithin(answer.value, truth.value, truth.within);
    case 'leader':
      return answer.by === 'leader' && answer.compartment === truth.compartment;
    case 'draw':
      return answer.by === 'draw' && isClose(answer.sketch, { truth: truth.curve, within: truth.within });
  }
}

/** Why an answer is wrong: set text of a lesson of the shelf, or plain words that came with the question. */
export type Because = { readonly html: string } | { readonly words: Words };

/** Why an answer is wrong; undefined where nobody has said. Curves are judged by what they lack: see `curve-reasons.ts`. */
export function becauseOf(answer: ClassAnswer, truth: Truth, reasons: Reasons): Because | undefined {
  if (answer.by === 'choice') {
    const html = reasons.choice?.[answer.option];
    if (html !== undefined) return { html };
    return truth.by === 'choice' ? plain(truth.because?.[answer.option]) : undefined;
  }
  if (answer.by === 'number') {
    const html = replyTo(answer.value, reasons.number)?.html;
    if (html !== undefined) return { html };
    return truth.by === 'number' ? plain(replyTo(answer.value, truth.because)?.words) : undefined;
  }
  if (answer.by === 'leader' && truth.by === 'leader')
    return plain(truth.because?.find(({ compartment }) => compartment === answer.compartment)?.words);
  return undefined;
}

const plain = (words: Words | undefined) => (words === undefined || words === '' ? undefined : { words });

function replyTo<Reply extends { readonly from?: number | undefined; readonly to?: number | undefined }>(
  value: number,
  replies: readonly Reply[] | undefined,
): Reply | undefined {
  return replies?.find(({ from, to }) => (from === undefined || value >= from) && (to === undefined || value < to));
}

/** A wrong answer that many gave, and why it is wrong. */
export interface CommonWrong {
  readonly count: number;
  /** Which of the options, which compartment; undefined for numbers, which are grouped by what is said to them. */
  readonly option: number | undefined;
  /** The numbers so grouped, smallest and largest. */
  readonly between: readonly [number, number] | undefined;
  readonly because: Because | undefined;
}

const MOST_TOLD = 3;

/** The wrong answers given most, the commonest first. */
export function commonestWrong(
  { by }: Ask,
  truth: Truth,
  answers: readonly ClassAnswer[],
  reasons: Reasons,
): CommonWrong[] {
  const groups = new Map<string, CommonWrong>();
  for (const answer of answers) {
    if (answer.by !== by || answer.by === 'draw' || isRight(answer, truth) !== false) continue;
    const one: CommonWrong = {
      count: 1,
      option: answer.by === 'choice' ? answer.option : answer.by === 'leader' ? answer.compartment : undefined,
      between: answer.by === 'number' ? [answer.value, answer.value] : undefined,
      because: becauseOf(answer, truth, reasons),
    };
    const key = JSON.stringify([one.option, one.because]);
    const before = groups.get(key);
    groups.set(key, before ? joined(before, one) : one);
  }
  return [...groups.values()].sort((one, other) => other.count - one.count).slice(0, MOST_TOLD);
}

function joined(one: CommonWrong, other: CommonWrong): CommonWrong {
  return {
    ...one,
    count: one.count + other.count,
    between: one.between &&
      other.between && [Math.min(one.between[0], other.between[0]), Math.max(one.between[1], other.between[1])],
  };
}
