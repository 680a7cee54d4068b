import { CONFIDENCES, type Answer, type Confidence, type LessonProgress, type Prediction } from './progress';
import type { Sketch } from './questions/sketch';
import { stepAsks } from './standing';

/** Answers that are one and the same, how many gave them, and what they gave as reasons. */
export interface SameAnswer {
  readonly answer: Answer;
  readonly count: number;
  readonly right: boolean;
  readonly reasons: readonly string[];
}

/** What a class answered to one question. First answers count, but for `later`. */
export interface QuestionOfClass {
  readonly step: string;
  /** The question of a check, by its number from 1; undefined elsewhere. */
  readonly question: number | undefined;
  readonly asks: 'prediction' | 'goal' | 'questions';
  /** Of how many people there are papers. */
  readonly people: number;
  readonly answered: number;
  readonly right: number;
  /** Looked at the answer, or at the way to the goal, before giving one. */
  readonly looked: number;
  /** How many were right with their last answer. */
  readonly rightAtLast: number;
  /** Of a prediction: the commonest first. Curves are each their own. */
  readonly answers: readonly SameAnswer[];
  /** The commonest answer that is not right; undefined where all were. */
  readonly commonestWrong: SameAnswer | undefined;
  /** The reason most often given for an answer that is not right, and how often; undefined where none was. */
  readonly wrongReason: { readonly reason: string; readonly count: number } | undefined;
  /** The numbers given, in rising order, in the unit of expressions. */
  readonly numbers: readonly number[];
  readonly curves: readonly Sketch[];
  /** How sure people were, and how many of those were right. */
  readonly sureness: readonly { readonly confidence: Confidence; readonly count: number; readonly right: number }[];
}

interface StepLike {
  readonly id: string;
  readonly kind: string;
  readonly questions?: readonly { readonly id: string }[];
}

/** The answers of a class to a lesson of these steps, question by question. The order of the papers makes no difference. */
export function classResults(steps: readonly StepLike[], papers: readonly LessonProgress[]): QuestionOfClass[] {
  return stepAsks(steps).flatMap((asked): QuestionOfClass[] => {
    if (asked.asks === 'prediction') return [predictionOf(asked.id, papers)];
    if (asked.asks === 'goal') return [goalOf(asked.id, papers)];
    return asked.keys.map((key, index) => checkOf(asked.id, key, index + 1, papers));
  });
}

const NO_ANSWERS = {
  answers: [],
  commonestWrong: undefined,
  wrongReason: undefined,
  numbers: [],
  curves: [],
  sureness: [],
} as const;

function predictionOf(step: string, papers: readonly LessonProgress[]): QuestionOfClass {
  const made = papers.flatMap(({ predictions }) => predictions[step] ?? []);
  // Who had looked has said nothing about what was expected.
  const first = made.flatMap(({ given, looked }) => (looked ? [] : given.slice(0, 1)));
  const answers = grouped(first);
  const numbers = first.flatMap(({ answer }) => (answer.by === 'number' ? [answer.value] : [])).sort((a, b) => a - b);
  return {
    step,
    question: undefined,
    asks: 'prediction',
    people: papers.length,
    answered: first.length,
    right: first.filter(({ right }) => right).length,
    looked: made.filter(({ looked }) => looked).length,
    rightAtLast: made.filter(({ given }) => given.at(-1)?.right).length,
    answers,
    commonestWrong: answers.find(({ right, answer }) => !right && answer.by !== 'draw'),
    wrongReason: commonestReason(first.filter(({ right }) => !right)),
    numbers,
    curves: first.flatMap(({ answer }) => (answer.by === 'draw' ? [answer.sketch] : [])),
    sureness: CONFIDENCES.map((confidence) => {
      const so = first.filter((one) => one.confidence === confidence);
      return { confidence, count: so.length, right: so.filter(({ right }) => right).length };
    }),
  };
}

/** The same answers together, the commonest first; of as many, the one that sorts first, so that order tells nothing. */
function grouped(given: readonly Prediction[]): SameAnswer[] {
  const groups = new Map<string, Prediction[]>();
  for (const one of given) {
    const key = JSON.stringify(one.answer);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.entries()]
    .sort(([key, one], [otherKey, other]) => other.length - one.length || (key < otherKey ? -1 : 1))
    .map(([, same]) => ({
      answer: same[0]!.answer,
      count: same.length,
      right: same[0]!.right,
      reasons: same
        .map(({ reason }) => reason)
        .filter((reason) => reason !== '')
        .sort(),
    }));
}

/** The reason given most often, whatever its capitals and full stops; of as many, the one that sorts first. */
function commonestReason(given: readonly Prediction[]): QuestionOfClass['wrongReason'] {
  const groups = new Map<string, string[]>();
  for (const { reason } of given) {
    const key = reason
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim();
    if (key !== '') groups.set(key, [...(groups.get(key) ?? []), reason]);
  }
  const [most] = [...groups.entries()].sort(
    ([key, one], [otherKey, other]) => other.length - one.length || (key < otherKey ? -1 : 1),
  );
  return most && { reason: most[1].sort()[0]!, count: most[1].length };
}

function goalOf(step: string, papers: readonly LessonProgress[]): QuestionOfClass {
  const tried = papers.flatMap(({ tries }) => tries[step] ?? []);
  const met = tried.filter((one) => one.met !== undefined);
  return {
    ...NO_ANSWERS,
    step,
    question: undefined,
    asks: 'goal',
    people: papers.length,
    answered: met.length,
    right: met.filter(({ looked }) => !looked).length,
    looked: tried.filter(({ looked }) => looked).length,
    rightAtLast: met.length,
  };
}

function checkOf(step: string, key: string, question: number, papers: readonly LessonProgress[]): QuestionOfClass {
  const answers = papers.flatMap(({ checks }) => checks[key] ?? []);
  return {
    ...NO_ANSWERS,
    step,
    question,
    asks: 'questions',
    people: papers.length,
    answered: answers.length,
    right: answers.filter(({ firstRight, right }) => firstRight ?? right).length,
    looked: 0,
    rightAtLast: answers.filter(({ right }) => right).length,
  };
}
