import { quantile } from '../quantity/quantile';
import type { ClassAnswer } from './answer';
import type { Asked, ClassState } from './class-state';
import { isRight } from './reasons';
import { answersOf } from './spread';
import { inUnits } from './words';

/** One round of one question, without anybody's name. */
export interface ResultRow {
  readonly question: string;
  /** From 1. */
  readonly round: number;
  readonly answered: number;
  /** Undefined where nobody has said what is right. */
  readonly right: number | undefined;
  /** The answers in words: how many chose what, or the middle and the ends. */
  readonly answers: string;
}

/** What a class has answered, question by question and round by round; `printValue` prints a number in the reader's units. */
export function resultRows(
  { asked }: Pick<ClassState, 'asked'>,
  printValue: (value: number, asked: Asked) => string,
): ResultRow[] {
  return asked.flatMap((one) =>
    one.rounds.map((_, round) => {
      const answers = answersOf(one, round);
      const judged = answers.map((answer) => isRight(answer, one.truth));
      return {
        question: one.ask.title,
        round: round + 1,
        answered: answers.length,
        right: judged.some((right) => right === undefined) ? undefined : judged.filter(Boolean).length,
        answers: inWords(one, answers, (value) => printValue(value, one)),
      };
    }),
  );
}

function inWords({ ask }: Asked, answers: readonly ClassAnswer[], print: (value: number) => string): string {
  if (answers.length === 0) return 'nobody answered';
  switch (ask.by) {
    case 'choice':
      return ask.options
        .map(
          (option, i) =>
            `${inUnits(option, 'metric')}: ${answers.filter((one) => one.by === 'choice' && one.option === i).length}`,
        )
        .join('; ');
    case 'leader': {
      const given = answers.flatMap((one) => (one.by === 'leader' ? [one.compartment] : []));
      return [...new Set(given)]
        .sort((one, other) => one - other)
        .map((number) => `compartment ${number}: ${given.filter((one) => one === number).length}`)
        .join('; ');
    }
    case 'number': {
      const values = answers
        .flatMap((one) => (one.by === 'number' ? [one.value] : []))
        .sort((one, other) => one - other);
      return `from ${print(values[0]!)} to ${print(values.at(-1)!)}, middle ${print(quantile(values, 0.5))}`;
    }
    case 'draw':
      return `${answers.length} ${answers.length === 1 ? 'curve' : 'curves'}`;
  }
}
