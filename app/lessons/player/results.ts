import type { LessonProgress, Prediction } from '@/lib/lesson/progress';
import { DIMENSION_UNITS } from '@/lib/lesson/expression/dimension';
import { entryUnit } from '@/lib/lesson/entry';
import { closeShare } from '@/lib/lesson/questions/sketch';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { PredictStep, PreparedLesson, PreparedStep } from '../prepared';
import { rounded } from './rounded';

/** One line of the results sheet. */
export interface ResultRow {
  readonly step: string;
  readonly answer: string;
  readonly outcome: string;
  readonly right: boolean | undefined;
  readonly reason: string;
  readonly confidence: string;
}

/** What was answered in a lesson, step by step, in words. Steps that ask nothing are left out. */
export function resultRows(lesson: PreparedLesson, progress: LessonProgress, system: UnitSystem): ResultRow[] {
  return lesson.steps.flatMap((step) => rowsOf(step, progress, system));
}

function rowsOf(step: PreparedStep, { predictions, met, checks }: LessonProgress, system: UnitSystem): ResultRow[] {
  if (step.kind === 'predict') {
    const made = predictions[step.id];
    return [made ? predicted(step, made, system) : blank(step.title)];
  }
  if (step.kind === 'try') {
    const done = met[step.id] !== undefined;
    return [
      {
        ...blank(step.title),
        answer: done ? 'your own dive' : '',
        outcome: done ? 'goal met' : 'not done yet',
        right: done || undefined,
      },
    ];
  }
  if (step.kind !== 'check') return [];
  return step.questions.map((question, index) => {
    const record = checks[`${step.id}/${question.id}`];
    const title = `${step.title}, question ${index + 1}`;
    return record
      ? { ...blank(title), answer: `${record.tries} tried`, outcome: `${record.rights} right`, right: record.right }
      : blank(title);
  });
}

function blank(step: string): ResultRow {
  return { step, answer: '', outcome: 'not done yet', right: undefined, reason: '', confidence: '' };
}

function predicted(
  step: PredictStep,
  { answer, reason, confidence, right }: Prediction,
  system: UnitSystem,
): ResultRow {
  return { step: step.title, reason, confidence, right, ...answerWords(step, answer, system) };
}

function answerWords(
  { choice, number, draw }: PredictStep,
  answer: Prediction['answer'],
  system: UnitSystem,
): Pick<ResultRow, 'answer' | 'outcome'> {
  if (answer.by === 'choice') {
    return {
      answer: plain(choice?.[answer.option]?.html, system),
      outcome: plain(choice?.find(({ right }) => right)?.html, system),
    };
  }
  if (answer.by === 'number') {
    const dimension = number?.answer.dimension ?? 'plain';
    const { unit, size } = entryUnit(dimension, system);
    return {
      answer: `${rounded(answer.value / size)} ${unit}`.trim(),
      outcome: number?.printed[system] ?? DIMENSION_UNITS[dimension],
    };
  }
  return {
    answer: 'a curve',
    outcome: draw ? `close for ${Math.round(closeShare(answer.sketch, draw) * 100)}% of the way` : '',
  };
}

/** The words of a text that has been set, in one system of units. */
function plain(html: string | undefined, system: UnitSystem): string {
  if (html === undefined) return '';
  const other = system === 'metric' ? 'imperial' : 'metric';
  return html
    .replace(new RegExp(`<span class="amount" data-in="${other}">[^<]*</span>`, 'g'), '')
    .replace(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', '’')
    .replaceAll('&amp;', '&');
}

/** The results as a text to keep. */
export function resultsText(
  lesson: PreparedLesson,
  rows: readonly ResultRow[],
  name: string,
  date: string,
  caution: string,
): string {
  const lines = rows.flatMap(({ step, answer, outcome, right, reason, confidence }) => [
    step,
    ...(answer === ''
      ? [`  ${outcome}`]
      : [
          `  you: ${answer}${confidence === '' ? '' : ` (${confidence})`}`,
          ...(reason === '' ? [] : [`  because: ${reason}`]),
          `  so: ${outcome}${right === undefined ? '' : right ? ' — as you said' : ' — other than you said'}`,
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
