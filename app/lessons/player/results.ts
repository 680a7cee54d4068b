import { DIMENSION_UNITS } from '@/lib/lesson/expression/dimension';
import { answerUnit } from '@/lib/lesson/typed-answer';
import type { Answer, LessonProgress, Predicted } from '@/lib/lesson/progress';
import { sayMoment } from '@/lib/lesson/questions/compare-sketch';
import { sketchAt, type Sketch } from '@/lib/lesson/questions/sketch';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { PredictStep, PreparedDraw, PreparedLesson, PreparedStep } from '../prepared';
import { plainWords } from '../plain-words';
import { rounded } from '../../parts/answers/rounded';

/** One line of the results sheet. */
export interface ResultRow {
  readonly step: string;
  /** The first answer, which later ones leave as it was. */
  readonly answer: string;
  /** A curve that was drawn. */
  readonly sketch?: { readonly drawn: Sketch; readonly draw: PreparedDraw } | undefined;
  readonly outcome: string;
  /** Whether the first answer was right; undefined where there is none. */
  readonly right: boolean | undefined;
  /** What came after the first answer, in words. */
  readonly later: string;
  readonly reason: string;
  readonly confidence: string;
}

/** What was answered in a lesson, step by step, in words. Steps that ask nothing are left out. */
export function resultRows(lesson: PreparedLesson, progress: LessonProgress, system: UnitSystem): ResultRow[] {
  return lesson.steps.flatMap((step) => rowsOf(step, progress, system));
}

function rowsOf(step: PreparedStep, { predictions, tries, checks }: LessonProgress, system: UnitSystem): ResultRow[] {
  if (step.kind === 'predict') {
    const made = predictions[step.id];
    return [made ? predicted(step, made, system) : blank(step.title)];
  }
  if (step.kind === 'try') {
    const { met, looked } = tries[step.id] ?? { met: undefined, looked: false };
    const done = met !== undefined;
    return [
      {
        ...blank(step.title),
        answer: done ? 'your own dive' : '',
        outcome: done ? 'goal met' : 'not done yet',
        later: looked ? 'after looking at the way' : '',
        right: done && !looked ? true : undefined,
      },
    ];
  }
  if (step.kind !== 'check') return [];
  return step.questions.map((question, index) => {
    const record = checks[`${step.id}/${question.id}`];
    const title = `${step.title}, question ${index + 1}`;
    if (!record) return blank(title);
    const { tries: asked, rights, firstRight } = record;
    return {
      ...blank(title),
      answer: `asked ${asked === 1 ? 'once' : `${asked} times`}`,
      outcome: firstRight === undefined ? `${rights} of ${asked} right` : firstRight ? 'right' : 'not right',
      right: firstRight,
      later: asked === 1 ? '' : `${rights} of ${asked} right in all`,
    };
  });
}

function blank(step: string): ResultRow {
  return { step, answer: '', outcome: 'not answered', right: undefined, later: '', reason: '', confidence: '' };
}

function predicted(step: PredictStep, { given, looked }: Predicted, system: UnitSystem): ResultRow {
  const [first, ...others] = given;
  if (!first) return { ...blank(step.title), outcome: looked ? 'looked without answering' : 'not answered' };
  const last = others.at(-1);
  const later = [
    ...(looked ? ['after looking'] : []),
    ...(last ? [`then ${answerWords(step, last.answer, system).answer}${last.right ? ', right' : ', not right'}`] : []),
  ];
  return {
    step: step.title,
    reason: first.reason,
    confidence: first.confidence,
    right: looked ? undefined : first.right,
    later: later.join('; '),
    ...answerWords(step, first.answer, system),
  };
}

export function answerWords(
  { choice, number, draw }: PredictStep,
  answer: Answer,
  system: UnitSystem,
): Pick<ResultRow, 'answer' | 'outcome' | 'sketch'> {
  if (answer.by === 'choice') {
    return {
      answer: withoutStop(plainWords(choice?.[answer.option]?.html, system)),
      outcome: withoutStop(plainWords(choice?.find(({ right }) => right)?.html, system)),
    };
  }
  if (answer.by === 'number') {
    const dimension = number?.answer.dimension ?? 'plain';
    const { unit, size } = answerUnit(dimension, system);
    return {
      answer: `${rounded(answer.value / size)} ${unit}`.trim(),
      outcome: number?.printed[system] ?? DIMENSION_UNITS[dimension],
    };
  }
  if (!draw) return { answer: 'a curve', outcome: '' };
  const { unit, size } = answerUnit(draw.dimension, system);
  const valuesOf = (sketch: Sketch) =>
    draw.boxesS.map((timeS) => `${rounded(sketchAt(sketch, timeS) / size)} at ${sayMoment(timeS, draw)}`).join(', ');
  return {
    answer: `${draw.noun}, ${unit}: ${valuesOf(answer.sketch)}`,
    outcome: valuesOf(draw.truth),
    sketch: { drawn: answer.sketch, draw },
  };
}

/** An answer among other words: its last full stop would end them. */
const withoutStop = (words: string) => words.replace(/\.$/, '');

/** The results as a text to keep. */
export function resultsText(
  lesson: PreparedLesson,
  rows: readonly ResultRow[],
  name: string,
  date: string,
  caution: string,
): string {
  const lines = rows.flatMap(({ step, answer, outcome, right, later, reason, confidence }) => [
    step,
    ...(answer === ''
      ? [`  ${outcome}`]
      : [
          `  you, first: ${answer}${confidence === '' ? '' : ` (${confidence})`}`,
          ...(reason === '' ? [] : [`  because: ${reason}`]),
          `  so: ${outcome}${right === undefined ? '' : right ? ' — as you said' : ' — other than you said'}`,
          ...(later === '' ? [] : [`  later: ${later}`]),
        ]),
    '',
  ]);
  return [
    `Halftime: ${lesson.title}`,
    ...(name === '' ? [] : [`Name: ${name}`]),
    `Date: ${date}`,
    '',
    ...lines,
    caution,
    '',
  ].join('\n');
}
