import { isClose } from '../lesson/questions/sketch';
import type { ClassAnswer } from './answer';
import type { Ask, Truth } from './ask';
import type { Reasons } from './lesson-ask';

/** Whether an answer is right; undefined where nobody has said what is. */
export function isRight(answer: ClassAnswer, truth: Truth): boolean | undefined {
  switch (truth.by) {
    case 'choice':
      return truth.right === undefined ? undefined : answer.by === 'choice' && answer.option === truth.right;
    case 'number':
      return answer.by === 'number' && Math.abs(answer.value - truth.value) <= truth.within + 1e-9;
    case 'leader':
      return answer.by === 'leader' && answer.compartment === truth.compartment;
    case 'draw':
      return answer.by === 'draw' && isClose(answer.sketch, { truth: truth.curve, within: truth.within });
  }
}

/** A wrong answer that many gave, and why it is wrong. */
export interface CommonWrong {
  readonly count: number;
  /** Which of the options, which compartment; undefined for numbers, which are grouped by what is said to them. */
  readonly option: number | undefined;
  /** The numbers so grouped, smallest and largest. */
  readonly between: readonly [number, number] | undefined;
  readonly because: string | undefined;
}

/** The wrong answers given most, the commonest first. Curves are judged by what they lack: see `curve-reasons.ts`. */
export function commonestWrong(
  { by }: Ask,
  truth: Truth,
  answers: readonly ClassAnswer[],
  reasons: Reasons,
  most = 3,
): CommonWrong[] {
  const groups = new Map<string, CommonWrong>();
  for (const answer of answers) {
    if (answer.by !== by || isRight(answer, truth) !== false) continue;
    const one = wrongOf(answer, reasons);
    if (!one) continue;
    const key = JSON.stringify([one.option, one.because]);
    const before = groups.get(key);
    groups.set(key, before ? joined(before, one) : one);
  }
  return [...groups.values()].sort((one, other) => other.count - one.count).slice(0, most);
}

function wrongOf(answer: ClassAnswer, { choice, number }: Reasons): CommonWrong | undefined {
  const one = { count: 1, option: undefined, between: undefined, because: undefined };
  switch (answer.by) {
    case 'choice':
      return { ...one, option: answer.option, because: choice?.[answer.option] };
    case 'leader':
      return { ...one, option: answer.compartment };
    case 'number': {
      const { value } = answer;
      const reason = number?.find(
        ({ from, to }) => (from === undefined || value >= from) && (to === undefined || value < to),
      );
      return { ...one, between: [value, value], because: reason?.html };
    }
    case 'draw':
      return undefined;
  }
}

function joined(one: CommonWrong, other: CommonWrong): CommonWrong {
  return {
    ...one,
    count: one.count + other.count,
    between: one.between &&
      other.between && [Math.min(one.between[0], other.between[0]), Math.max(one.between[1], other.between[1])],
  };
}
