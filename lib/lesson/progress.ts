import type { SketchPoint } from './questions/sketch';

/** What one learner has done in lessons, as plain data. Kept on their own device and nowhere else. */
export interface Progress {
  readonly lessons: Readonly<Record<string, LessonProgress>>;
}

export interface LessonProgress {
  /** The step the learner stands at, by id. */
  readonly at: string | undefined;
  /** Steps that have been seen to their end, by id. */
  readonly done: readonly string[];
  readonly predictions: Readonly<Record<string, Prediction>>;
  /** Goals that have been met, by step. */
  readonly met: Readonly<Record<string, string>>;
  /** Answers to check questions, by step and question: `step/question`. */
  readonly checks: Readonly<Record<string, CheckAnswer>>;
}

export const CONFIDENCES = ['a guess', 'fairly sure', 'sure'] as const;
export type Confidence = (typeof CONFIDENCES)[number];

export type Answer =
  | { readonly by: 'choice'; readonly option: number }
  /** In the unit of the lesson's expressions. */
  | { readonly by: 'number'; readonly value: number }
  | { readonly by: 'draw'; readonly sketch: readonly SketchPoint[] };

/** What was foretold, why, and how surely; and whether it has been held against what is so. */
export interface Prediction {
  readonly answer: Answer;
  readonly reason: string;
  readonly confidence: Confidence;
  readonly right: boolean;
}

/** The last answer to a question that is drawn afresh. */
interface CheckAnswer {
  readonly seed: number;
  readonly right: boolean;
  /** How many were answered, and how many rightly. */
  readonly tries: number;
  readonly rights: number;
}

export const NO_PROGRESS: Progress = { lessons: {} };
const NONE: LessonProgress = { at: undefined, done: [], predictions: {}, met: {}, checks: {} };

/** What was done in one lesson; nothing where it was never begun. */
export function progressIn(progress: Progress, slug: string): LessonProgress {
  return (Object.hasOwn(progress.lessons, slug) ? progress.lessons[slug] : undefined) ?? NONE;
}

function changed(progress: Progress, slug: string, change: (own: LessonProgress) => Partial<LessonProgress>): Progress {
  const own = progressIn(progress, slug);
  return { lessons: { ...progress.lessons, [slug]: { ...own, ...change(own) } } };
}

/** The progress with the learner standing at a step of a lesson. */
export function standingAt(progress: Progress, slug: string, step: string): Progress {
  return changed(progress, slug, () => ({ at: step }));
}

/** The progress with a step of a lesson done; once however often it is done. */
export function withDone(progress: Progress, slug: string, step: string): Progress {
  return changed(progress, slug, ({ done }) => ({ done: done.includes(step) ? done : [...done, step] }));
}

/** The progress with what was foretold at a step, in place of an earlier prediction. */
export function withPrediction(progress: Progress, slug: string, step: string, prediction: Prediction): Progress {
  return changed(progress, slug, ({ predictions }) => ({ predictions: { ...predictions, [step]: prediction } }));
}

/** Takes a prediction back, so that it can be made anew. */
export function withoutPrediction(progress: Progress, slug: string, step: string): Progress {
  return changed(progress, slug, ({ predictions }) => ({
    predictions: Object.fromEntries(Object.entries(predictions).filter(([id]) => id !== step)),
  }));
}

/** The progress with the goal of a step met by a script. */
export function withMet(progress: Progress, slug: string, step: string, script: string): Progress {
  return changed(progress, slug, ({ met }) => ({ met: { ...met, [step]: script } }));
}

/**
 * The progress with one more answer to a question of a check, counted as right or wrong; `seed` is what its numbers
 * were drawn from.
 */
export function withCheck(
  progress: Progress,
  slug: string,
  step: string,
  question: string,
  seed: number,
  right: boolean,
): Progress {
  const key = `${step}/${question}`;
  return changed(progress, slug, ({ checks }) => {
    const before = checks[key];
    return {
      checks: {
        ...checks,
        [key]: { seed, right, tries: (before?.tries ?? 0) + 1, rights: (before?.rights ?? 0) + (right ? 1 : 0) },
      },
    };
  });
}

/** Forgets one lesson. */
export function withoutLesson(progress: Progress, slug: string): Progress {
  return { lessons: Object.fromEntries(Object.entries(progress.lessons).filter(([name]) => name !== slug)) };
}

const MOST_REASON = 2000;

/** Progress from a record of unknown making: what can be used of it, piece by piece. Never throws. */
export function readProgress(record: unknown): Progress {
  const lessons: Record<string, LessonProgress> = {};
  for (const [slug, own] of entriesOf(fieldOf(record, 'lessons'))) {
    if (!/^[a-z0-9-]{1,80}$/.test(slug)) continue;
    const at = fieldOf(own, 'at');
    const done = fieldOf(own, 'done');
    lessons[slug] = {
      at: typeof at === 'string' ? at : undefined,
      done: Array.isArray(done) ? done.filter((step): step is string => typeof step === 'string').slice(0, 100) : [],
      predictions: readEach(fieldOf(own, 'predictions'), readPrediction),
      met: readEach(fieldOf(own, 'met'), (script) => (typeof script === 'string' ? script : undefined)),
      checks: readEach(fieldOf(own, 'checks'), readCheck),
    };
  }
  return { lessons };
}

function fieldOf(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, name)
    ? (value as Record<string, unknown>)[name]
    : undefined;
}

function entriesOf(value: unknown): [string, unknown][] {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).slice(0, 200)
    : [];
}

function readEach<T>(value: unknown, read: (one: unknown) => T | undefined): Record<string, T> {
  return Object.fromEntries(
    entriesOf(value).flatMap(([key, one]): [string, T][] => {
      const made = read(one);
      return made === undefined ? [] : [[key, made]];
    }),
  );
}

function readPrediction(value: unknown): Prediction | undefined {
  const answer = readAnswer(fieldOf(value, 'answer'));
  const confidence = CONFIDENCES.find((one) => one === fieldOf(value, 'confidence'));
  const reason = fieldOf(value, 'reason');
  const right = fieldOf(value, 'right');
  if (!answer || !confidence || typeof reason !== 'string' || typeof right !== 'boolean') return undefined;
  return { answer, confidence, reason: reason.slice(0, MOST_REASON), right };
}

function readAnswer(value: unknown): Answer | undefined {
  const by = fieldOf(value, 'by');
  const option = fieldOf(value, 'option');
  const number = fieldOf(value, 'value');
  const sketch = fieldOf(value, 'sketch');
  if (by === 'choice' && isNumber(option)) return { by, option };
  if (by === 'number' && isNumber(number)) return { by, value: number };
  if (by !== 'draw' || !Array.isArray(sketch)) return undefined;
  const points = sketch
    .slice(0, 400)
    .map((point) => ({ timeS: fieldOf(point, 'timeS'), value: fieldOf(point, 'value') }));
  return points.every((point): point is SketchPoint => isNumber(point.timeS) && isNumber(point.value))
    ? { by, sketch: points }
    : undefined;
}

function readCheck(value: unknown): CheckAnswer | undefined {
  const [seed, tries, rights] = [fieldOf(value, 'seed'), fieldOf(value, 'tries'), fieldOf(value, 'rights')];
  const right = fieldOf(value, 'right');
  return isNumber(seed) && isNumber(tries) && isNumber(rights) && typeof right === 'boolean'
    ? { seed, tries, rights, right }
    : undefined;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
