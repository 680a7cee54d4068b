import type { Ask, Truth } from '@/lib/class/ask';
import { MOST_REPLIES } from '@/lib/class/bounds';
import type { LessonAnswer, LessonAnswers, LessonAsk, LessonAsks, NumberReason, Reasons } from '@/lib/class/lesson-ask';
import type { Words } from '@/lib/class/words';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import { fillIn } from './fill';
import { answerNumber, askQuestion, numberReply } from './player/engine';
import type { Dimension } from '@/lib/lesson/expression/dimension';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import type { CheckStep, Html, PredictStep, PreparedLesson, PreparedOption, PreparedQuestion } from './prepared';

/*
 * The questions of a lesson for a class that answers on phones, made at build time: what is asked apart from what is right,
 * so that the one can be read without the other.
 */

interface AskAndAnswer {
  readonly ask: LessonAsk;
  readonly answer: LessonAnswer;
}

/** Which numbers a question that is drawn afresh has in every class. */
const SEED = 1;
/** Numbers tried to find where one reply ends and the next begins. */
const TRIED = 600;
/** Points of a depth line. */
const MOST_POINTS = 120;

/** What a lesson asks a class. */
export function classAsks(lesson: PreparedLesson): LessonAsks {
  return { title: lesson.title, asks: questionsOf(lesson).map(({ ask }) => ask) };
}

/** What is right, and why other answers are not. */
export function classAnswers(lesson: PreparedLesson): LessonAnswers {
  return { answers: questionsOf(lesson).map(({ answer }) => answer), scripts: lesson.scripts };
}

/** A question of a lesson that has no pages: its words travel with it, as plain text. */
export interface PlainAsk {
  readonly question: string;
  readonly ask: Ask;
  readonly truth: Truth;
}

/** The same for a lesson that is not on the shelf, which phones can read nowhere. */
export function plainAsks(lesson: PreparedLesson): PlainAsk[] {
  return questionsOf(lesson).map(({ ask: { id, html, optionsHtml, asked }, answer: { truth, reasons } }) => ({
    question: id,
    ask: {
      ...asked,
      id: 'own',
      text: inBoth(html),
      ...(asked.by === 'choice' && { options: optionsHtml!.map(inBoth) }),
    },
    truth: withReasons(truth, reasons),
  }));
}

function withReasons(truth: Truth, { choice, number }: Reasons): Truth {
  if (truth.by === 'choice' && choice) return { ...truth, because: choice.map(inBoth) };
  if (truth.by === 'number' && number)
    return {
      ...truth,
      because: number.slice(0, MOST_REPLIES).map(({ from, to, html }) => ({
        ...(from !== undefined && { from }),
        ...(to !== undefined && { to }),
        words: inBoth(html),
      })),
    };
  return truth;
}

const LONGEST_WORDS = 1000;

function inBoth(html: Html): Words {
  const [metric, imperial] = (['metric', 'imperial'] as const).map((system) =>
    readIn(html, system).slice(0, LONGEST_WORDS),
  );
  return { metric: metric || '–', imperial: imperial || '–' };
}

const known = new WeakMap<PreparedLesson, readonly AskAndAnswer[]>();

function questionsOf(lesson: PreparedLesson): readonly AskAndAnswer[] {
  const before = known.get(lesson);
  if (before) return before;
  const made = lesson.steps.flatMap((step) => {
    if (step.kind === 'predict') return [predicted(lesson, step)];
    if (step.kind !== 'check') return [];
    return step.questions.map((question, i) => checked(lesson, step, question, i));
  });
  known.set(lesson, made);
  return made;
}

function predicted(lesson: PreparedLesson, step: PredictStep): AskAndAnswer {
  const { id, title, html, choice, number, draw } = step;
  const script = lesson.scripts[step.script]!.script;
  const answer = { id, after: step.after, script };
  // A curve is drawn on axes of its own, over the same time.
  if (draw) {
    const { features, truth, within, format, fromS, toS, dimension, upTo, noun, zeroS, since, boxesS } = draw;
    const axes = { fromS, toS, dimension, upTo, noun, zeroS, since, boxesS };
    const world = lessonWorld(lesson).about(step.script);
    return {
      ask: {
        id,
        html,
        optionsHtml: undefined,
        asked: { title, by: 'draw', axes: { ...axes, boxesS: [...axes.boxesS] } },
      },
      answer: {
        ...answer,
        truth: { by: 'draw', curve: [...truth], within },
        reasons: {
          draw: {
            asked: { ...axes, truth, within, format },
            features: features.map((one) => ({ ...one, because: fillIn(one.because, world) })),
          },
        },
      },
    };
  }
  const picture = depthLineOf(script, number?.answer.dimension);
  if (number) {
    const { value, dimension } = number.answer;
    return {
      ask: { id, html, optionsHtml: undefined, asked: { title, by: 'number', dimension, picture } },
      answer: {
        ...answer,
        truth: { by: 'number', value, within: number.within, printed: number.printed },
        reasons: { number: reasonsBetween(value, (given) => numberReply(lesson, step, given)) },
      },
    };
  }
  return options({ id, title, html, picture }, answer, choice!);
}

function checked(lesson: PreparedLesson, step: CheckStep, question: PreparedQuestion, index: number): AskAndAnswer {
  const asked = askQuestion(lesson, step, question, SEED);
  const id = `${step.id}/${question.id}`;
  const title = step.questions.length === 1 ? step.title : `${step.title}, question ${index + 1}`;
  const script = asked.script ?? lesson.scripts[step.script]!.script;
  const answer = { id, after: asked.after, script };
  const picture = depthLineOf(script, asked.number?.answer.dimension);
  if (asked.options) return options({ id, title, html: asked.ask, picture }, answer, asked.options);
  const { answer: amount, within } = asked.number!;
  const read = (system: 'metric' | 'imperial') => readIn(asked.numberHtml!, system);
  return {
    ask: {
      id,
      html: asked.ask,
      optionsHtml: undefined,
      asked: { title, by: 'number', dimension: amount.dimension, picture },
    },
    answer: {
      ...answer,
      truth: {
        by: 'number',
        value: amount.value,
        within,
        printed: { metric: read('metric'), imperial: read('imperial') },
      },
      reasons: { number: reasonsBetween(amount.value, (given) => answerNumber(asked, question, given).because) },
    },
  };
}

function options(
  { id, title, html, picture }: Pick<LessonAsk, 'id' | 'html'> & { title: string; picture: DepthLine },
  answer: Pick<LessonAnswer, 'id' | 'after' | 'script'>,
  choice: readonly PreparedOption[],
): AskAndAnswer {
  return {
    ask: {
      id,
      html,
      optionsHtml: choice.map((one) => one.html),
      asked: { title, by: 'choice', options: choice.map((one) => plain(one.html)), picture },
    },
    answer: {
      ...answer,
      truth: { by: 'choice', right: choice.findIndex(({ right }) => right) },
      reasons: { choice: choice.map(({ because }) => because) },
    },
  };
}

type DepthLine = { points: [number, number][] } | undefined;

/** The depth of a dive over its time: of what the model makes of it, it tells nothing. Where a depth or a rate is asked for, none. */
function depthLineOf(script: string, asked: Dimension | undefined): DepthLine {
  if (asked === 'depth' || asked === 'rate') return undefined;
  const parsed = parseScript(script);
  if (!parsed.ok) return undefined;
  const { legs } = computeTimeline(parsed.dive, 60);
  const points = legs.flatMap(({ startS, endS, fromM, toM }): [number, number][] => [
    [Math.round(startS), tenth(fromM)],
    [Math.round(endS), tenth(toM)],
  ]);
  const kept = points.filter((point, i) => i === 0 || String(point) !== String(points[i - 1]));
  return kept.length >= 2 && kept.length <= MOST_POINTS ? { points: kept } : undefined;
}

const tenth = (value: number) => Math.round(value * 10) / 10;

/** What is said to numbers, found by trying them: from nothing to three times the right one, and beyond. */
function reasonsBetween(right: number, reply: (given: number) => Html | undefined): NumberReason[] {
  const step = (Math.max(Math.abs(right), 1) * 3) / TRIED;
  const found: { from: number | undefined; to: number | undefined; html: string }[] = [];
  for (let i = 0; i <= TRIED; i += 1) {
    const html = reply(i * step);
    const last = found.at(-1);
    if (html === undefined) {
      if (last && last.to === undefined) last.to = i * step;
    } else if (last?.html === html && last.to === undefined) continue;
    else {
      if (last && last.to === undefined) last.to = i * step;
      found.push({ from: i === 0 ? undefined : i * step, to: undefined, html });
    }
  }
  return found;
}

/** A line of HTML as plain text in metric units: for lists and files, where nothing is set. */
function plain(html: Html): string {
  return readIn(html, 'metric').slice(0, 400) || '–';
}

function readIn(html: Html, system: 'metric' | 'imperial'): string {
  const other = system === 'metric' ? 'imperial' : 'metric';
  return html
    .replace(new RegExp(`<span class="amount" data-in="${other}">[^<]*</span>`, 'g'), '')
    .replace(/<annotation[^]*?<\/annotation>/g, '')
    .replace(/<[^>]*>/g, '')
    .replaceAll('\u00a0', ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', '’')
    .replaceAll('&amp;', '&')
    .trim();
}
