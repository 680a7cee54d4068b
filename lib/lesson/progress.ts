import type { SketchPoint } from './questions/sketch';

/** What one learner has done in lessons, as plain data. Kept on their own device and nowhere else. */
export interface Progress {
  readonly lessons: Readonly<Record<string, LessonProgress>>;
}

export interface LessonProgress {
  /** The step the learner stands at, by id. */
  readonly at: string | undefined;
  /** Steps that have been gone past, by id: seen, and no more. */
  readonly seen: readonly string[];
  readonly predictions: Readonly<Record<string, Predicted>>;
  /** Goals of the learner’s own dives, by step. */
  readonly tries: Readonly<Record<string, Tried>>;
  /** Answers to check questions, by step and question: `step/question`. */
  readonly checks: Readonly<Record<string, CheckAnswer>>;
  /** What is half given, by step, or by step and question. */
  readonly drafts: Readonly<Record<string, Draft>>;
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
  /** Given when the model's answer had been seen. */
  readonly knowing: boolean;
}

/** Everything that was said to one question, the first answer first; nothing is written over. */
export interface Predicted {
  readonly given: readonly Prediction[];
  /** The model's answer was looked at before any was given. */
  readonly looked: boolean;
  /** It is being answered once more. */
  readonly again: boolean;
}

export interface Tried {
  /** The dive that met the goal. */
  readonly met: string | undefined;
  /** The way to do it was looked at before the goal was met. */
  readonly looked: boolean;
}

/** What was answered to a question that is drawn afresh. */
export interface CheckAnswer {
  readonly seed: number;
  readonly right: boolean;
  /** Whether the very first answer was right; undefined in records from before that was kept. */
  readonly firstRight: boolean | undefined;
  /** How many were answered, and how many rightly. */
  readonly tries: number;
  readonly rights: number;
}

/** A half-given answer, as it stands. */
export interface Draft {
  readonly answer?: Answer | undefined;
  /** A number as it was typed. */
  readonly text?: string | undefined;
  readonly reason?: string | undefined;
  readonly confidence?: Confidence | undefined;
  /** Which numbers were drawn for a question. */
  readonly seed?: number | undefined;
  /** A dive in the making. */
  readonly script?: string | undefined;
}

export const NO_PROGRESS: Progress = { lessons: {} };
export const NOTHING_YET: LessonProgress = {
  at: undefined,
  seen: [],
  predictions: {},
  tries: {},
  checks: {},
  drafts: {},
};
export const NOT_PREDICTED: Predicted = { given: [], looked: false, again: false };
const NOT_TRIED: Tried = { met: undefined, looked: false };

/** What was done in one lesson; nothing where it was never begun. */
export function progressIn(progress: Progress, slug: string): LessonProgress {
  return (Object.hasOwn(progress.lessons, slug) ? progress.lessons[slug] : undefined) ?? NOTHING_YET;
}

function changed(progress: Progress, slug: string, change: (own: LessonProgress) => Partial<LessonProgress>): Progress {
  const own = progressIn(progress, slug);
  return { lessons: { ...progress.lessons, [slug]: { ...own, ...change(own) } } };
}

/** The progress with the learner standing at a step of a lesson. */
export function standingAt(progress: Progress, slug: string, step: string): Progress {
  return changed(progress, slug, () => ({ at: step }));
}

/** Progress in which a step of a lesson has been seen, answered or not. */
export function withSeen(progress: Progress, slug: string, step: string): Progress {
  return changed(progress, slug, ({ seen }) => ({ seen: seen.includes(step) ? seen : [...seen, step] }));
}

function withPredicted(
  progress: Progress,
  slug: string,
  step: string,
  change: (before: Predicted) => Partial<Predicted>,
): Progress {
  return changed(progress, slug, ({ predictions }) => {
    const before = predictions[step] ?? NOT_PREDICTED;
    return { predictions: { ...predictions, [step]: { ...before, ...change(before) } } };
  });
}

/** Adds an answer to those given before; what was half given is done with. */
export function withPrediction(
  progress: Progress,
  slug: string,
  step: string,
  prediction: Omit<Prediction, 'knowing'>,
): Progress {
  const given = withPredicted(progress, slug, step, (before) => ({
    given: [...before.given, { ...prediction, knowing: before.looked || before.given.length > 0 }],
    again: false,
  }));
  return withoutDraft(given, slug, step);
}

/** The model's answer is shown without one of the learner's own. */
export function withLooked(progress: Progress, slug: string, step: string): Progress {
  return withPredicted(progress, slug, step, ({ given }) => ({ looked: given.length === 0, again: false }));
}

/** Asks once more; what was said before stays. */
export function askedAgain(progress: Progress, slug: string, step: string): Progress {
  return withPredicted(progress, slug, step, () => ({ again: true }));
}

function withTried(
  progress: Progress,
  slug: string,
  step: string,
  change: (before: Tried) => Partial<Tried>,
): Progress {
  return changed(progress, slug, ({ tries }) => {
    const before = tries[step] ?? NOT_TRIED;
    return { tries: { ...tries, [step]: { ...before, ...change(before) } } };
  });
}

/** The progress with the goal of a step met by a script. */
export function withMet(progress: Progress, slug: string, step: string, script: string): Progress {
  return withTried(progress, slug, step, () => ({ met: script }));
}

/** The way to meet a goal was looked at; once it is met that changes nothing. */
export function withWayLooked(progress: Progress, slug: string, step: string): Progress {
  return withTried(progress, slug, step, ({ met, looked }) => ({ looked: looked || met === undefined }));
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
  const counted = changed(progress, slug, ({ checks }) => {
    const before = checks[key];
    return {
      checks: {
        ...checks,
        [key]: {
          seed,
          right,
          firstRight: before ? before.firstRight : right,
          tries: (before?.tries ?? 0) + 1,
          rights: (before?.rights ?? 0) + (right ? 1 : 0),
        },
      },
    };
  });
  return withoutDraft(counted, slug, key);
}

/** Keeps what is half given; parts that are left out stay as they were. */
export function withDraft(progress: Progress, slug: string, key: string, draft: Draft): Progress {
  return changed(progress, slug, ({ drafts }) => ({ drafts: { ...drafts, [key]: { ...drafts[key], ...draft } } }));
}

/** Progress without the draft of an answer, by the key of its question. */
export function withoutDraft(progress: Progress, slug: string, key: string): Progress {
  return changed(progress, slug, ({ drafts }) => ({
    drafts: Object.fromEntries(Object.entries(drafts).filter(([name]) => name !== key)),
  }));
}

/** Forgets one lesson, so that it can be started over. */
export function withoutLesson(progress: Progress, slug: string): Progress {
  return { lessons: Object.fromEntries(Object.entries(progress.lessons).filter(([name]) => name !== slug)) };
}
