import { accepted, refused } from '../../quantity/parsed';
import type { NumberAnswer, Option, PickAnswer } from './answer';
import { evaluateAmount, evaluateAs, evaluateTruth, type Evaluated } from '../expression/evaluate';
import { parseExpression } from '../expression/parse-expression';
import { printBoth, formOf, type Filled } from '../expression/template';
import { withValues, type Amount, type World } from '../expression/world';
import { isWithin } from './within';

/** What a question comes to in its world, and what is said to each answer. */
export type Judged<T> = Evaluated<T>;

function parsedThen<T>(
  source: string,
  then: (expression: Extract<ReturnType<typeof parseExpression>, { ok: true }>['value']) => Evaluated<T>,
): Evaluated<T> {
  const parsed = parseExpression(source);
  return parsed.ok ? then(parsed.value) : { ...parsed, cause: 'wording' };
}

/** Whether a condition written as text is so. */
export function judgeCondition(source: string, world: World): Evaluated<boolean> {
  return parsedThen(source, (expression) => evaluateTruth(expression, world));
}

/** An amount written as an expression. */
export function judgeAmount(source: string, world: World): Evaluated<Amount> {
  return parsedThen(source, (expression) => evaluateAmount(expression, world));
}

/** Which of the options is right; refused unless exactly one is. */
export function rightOption(options: readonly Option[], world: World): Judged<number> {
  const right: number[] = [];
  for (const [index, { holds, right: stated }] of options.entries()) {
    if (holds === undefined) {
      if (stated) right.push(index);
      continue;
    }
    const so = judgeCondition(holds, world);
    if (!so.ok) return so;
    if (so.value) right.push(index);
  }
  if (right.length === 1) return { ok: true, value: right[0]! };
  const what = right.length === 0 ? 'None of the answers is right.' : `${right.length} of the answers are right.`;
  return { ...refused(what, 'See to it that exactly one of the conditions holds.'), cause: 'wording' };
}

/** A number asked for: the answer, how far off still counts, and how it is printed. */
export interface NumberAsked {
  readonly answer: Amount;
  readonly within: number;
  readonly format: string | undefined;
}

/**
 * The right answer to a question for a number in a world, and how far off still counts; or what keeps it from being
 * worked out.
 */
export function numberAsked(
  { answer: source, within, as }: Pick<NumberAnswer, 'answer' | 'within' | 'as'>,
  world: World,
): Judged<NumberAsked> {
  return parsedThen(source, (expression) => {
    const answer = evaluateAmount(expression, world);
    if (!answer.ok) return answer;
    if (!Number.isFinite(answer.value.value))
      return {
        ...refused(
          'The answer is without end, and nobody can give it as a number.',
          'Ask for something that ends, or ask by choice.',
        ),
        cause: 'no value',
      };
    const off = parsedThen(within, (one) =>
      evaluateAs(one, withValues(world, { answer: answer.value }), answer.value.dimension),
    );
    if (!off.ok) return off;
    if (!(off.value >= 0) || !Number.isFinite(off.value))
      return {
        ...refused('What still counts is not a width.', 'Write how far off an answer may be, such as 2 min.'),
        cause: 'wording',
      };
    return accepted({ answer: answer.value, within: off.value, format: formOf(expression, as) }) as {
      ok: true;
      value: NumberAsked;
    };
  });
}

/** What the first of some replies says whose condition is so; undefined where none's is. */
export function replyTo<Because>(
  replies: readonly { readonly when: string; readonly because: Because }[],
  world: World,
): Because | undefined {
  return replies.find(({ when }) => {
    const so = judgeCondition(when, world);
    return so.ok && so.value;
  })?.because;
}

/** A number given, judged. */
export interface NumberJudged {
  readonly right: boolean;
  /** The text that fits a wrong answer, with slots; nothing for a right one. */
  readonly because: string | undefined;
  /** The world its slots are filled in: `given`, `answer` and `within` are known there. */
  readonly world: World;
}

/** Whether a number given, in the unit of expressions, is right, and what is said to it if it is not. */
export function judgeNumber(
  question: NumberAnswer,
  { answer, within }: NumberAsked,
  given: number,
  world: World,
): NumberJudged {
  const { dimension } = answer;
  const inside = withValues(world, {
    given: { value: given, dimension },
    answer,
    within: { value: within, dimension },
  });
  const right = isWithin(given, answer.value, within);
  return { right, because: right ? undefined : (replyTo(question.wrong, inside) ?? question.otherwise), world: inside };
}

/** One of the numbers to pick from. */
export interface Picked {
  readonly right: boolean;
  readonly printed: Filled;
  readonly because: string;
}

/** The right number first, then the wrong ones that read differently from it and from one another in both systems. */
export function numbersToPick({ answer, as, because, others }: PickAnswer, world: World): Judged<readonly Picked[]> {
  const picked: Picked[] = [];
  for (const { source, why, right } of [
    { source: answer, why: because, right: true },
    ...others.map((one) => ({ source: one.value, why: one.because, right: false })),
  ]) {
    const read = parsedThen(source, (expression) => {
      const amount = evaluateAmount(expression, world);
      return amount.ok ? { ok: true as const, value: printBoth(amount.value, formOf(expression, as)) } : amount;
    });
    if (!read.ok) {
      if (right || read.cause === 'wording') return read;
      continue;
    }
    const { metric, imperial } = read.value;
    if (picked.some(({ printed }) => printed.metric === metric || printed.imperial === imperial)) continue;
    picked.push({ right, printed: read.value, because: why });
  }
  if (picked.length > 1) return { ok: true, value: picked };
  return {
    ...refused(
      'No wrong number is left to pick: all read like the right one.',
      'Add a mistake that leads to another number.',
    ),
    cause: 'wording',
  };
}
