import type { FeatureJudged } from '../lesson/questions/judge-sketch';
import type { DrawAsked } from '../lesson/questions/sketch';
import type { Lesson } from '../lesson/lesson';
import type { Ask, Truth } from './ask';

type WithoutSource<One> = One extends unknown ? Omit<One, 'id' | 'source' | 'text'> : never;

/** A question of a lesson, set for phones. Nothing in it says what is right. */
export interface LessonAsk {
  /** Its step, or its step and question: `step/question`. */
  readonly id: string;
  /** Text set as HTML at build time, with its values in both systems of units. */
  readonly html: string;
  /** The options as HTML, in the order of the question's own. */
  readonly optionsHtml: readonly string[] | undefined;
  readonly asked: WithoutSource<Ask>;
}

/** What is said to a number, from one value to below another; open where there is no end. */
export interface NumberReason {
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly html: string;
}

type Feature = Pick<FeatureJudged<string>, 'name' | 'because'> & { readonly holds: string; readonly weight: number };

/** Why a wrong answer is wrong, as HTML set at build time. */
export interface Reasons {
  readonly choice?: readonly string[] | undefined;
  readonly number?: readonly NumberReason[] | undefined;
  readonly draw?: { readonly asked: DrawAsked; readonly features: readonly Feature[] } | undefined;
}

/** What belongs to a question of a lesson once it is answered. */
export interface LessonAnswer {
  readonly id: string;
  readonly truth: Truth;
  readonly reasons: Reasons;
  /** Read after the answer, as HTML. */
  readonly after: string | undefined;
  /** The dive it is about. */
  readonly script: string;
}

/** What a lesson gives a class to answer, and then to read. */
export interface LessonAsks {
  readonly title: string;
  readonly asks: readonly LessonAsk[];
}
export interface LessonAnswers {
  readonly answers: readonly LessonAnswer[];
  /** Its dives, in whose world curves are judged. */
  readonly scripts: Lesson['scripts'];
}
