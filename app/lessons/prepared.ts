import type { Amount } from '@/lib/lesson/expression/world';
import type { DrawAsked } from '@/lib/lesson/questions/sketch';
import type { Filled } from '@/lib/lesson/expression/template';
import type { Freedom } from '@/lib/lesson/questions/kept-settings';
import type { Lesson, Level } from '@/lib/lesson/lesson';
import type { Question } from '@/lib/lesson/step';
import type { Fillable } from './fillable';
import type { Otherwise } from './in-units';

/** Text set as HTML, with its values in both systems of units. */
export type Html = string;

/** A lesson ready for the screen: its texts set, its answers worked out. Plain data, so that a page can hand it on. */
export interface PreparedLesson {
  readonly slug: string;
  readonly number: number | undefined;
  readonly title: string;
  readonly summary: string;
  readonly level: Level;
  readonly minutes: number;
  readonly needs: readonly Html[];
  readonly objectives: readonly Html[];
  /** Cautions besides the general one, in full. */
  readonly cautions: readonly string[];
  readonly scripts: Lesson['scripts'];
  readonly opening: Html | undefined;
  readonly steps: readonly PreparedStep[];
  /** What is otherwise in feet, where the lesson has figures of its own there; see in-units.ts. */
  readonly inFeet?: { readonly within: Readonly<Record<string, Otherwise>> };
}

export interface PreparedNotes {
  readonly ask: readonly Html[];
  readonly wrong: readonly { readonly answer: Html; readonly tempts: Html }[];
  readonly tip: Html | undefined;
}

export interface PreparedReply {
  readonly when: string;
  readonly because: Fillable;
}

export interface PreparedOption {
  readonly html: Html;
  readonly right: boolean;
  readonly because: Html;
}

interface PreparedNumber {
  readonly answer: Amount;
  readonly within: number;
  readonly format: string | undefined;
  readonly printed: Filled;
  readonly wrong: readonly PreparedReply[];
  readonly otherwise: Fillable;
}

export interface PreparedFeature {
  readonly name: string;
  readonly holds: string;
  readonly weight: number;
  readonly because: Fillable;
}

export interface PreparedDraw extends DrawAsked {
  readonly features: readonly PreparedFeature[];
  readonly wrong: readonly PreparedReply[];
}

interface Common {
  readonly id: string;
  readonly title: string;
  readonly html: Html;
  /** Folded away under it. */
  readonly more: Html | undefined;
  readonly notes: PreparedNotes | undefined;
}

export interface ReadStep extends Common {
  readonly kind: 'read';
  readonly look:
    | {
        readonly script: string;
        readonly show: readonly string[];
        readonly atS: number;
        readonly untilS: number | undefined;
      }
    | undefined;
}

export interface PredictStep extends Common {
  readonly kind: 'predict';
  readonly script: string;
  /** Whether a figure of the model decides what is right, and not what is known of people or taught. */
  readonly byModel: boolean;
  readonly choice: readonly PreparedOption[] | undefined;
  readonly number: PreparedNumber | undefined;
  readonly draw: PreparedDraw | undefined;
  readonly after: Html;
}

export interface RunStep extends Common {
  readonly kind: 'run';
  readonly script: string;
  readonly show: readonly string[];
  readonly readings: readonly string[] | undefined;
  readonly fromS: number;
  readonly toS: number;
  /** Where the pictures end, so that a later question is not answered by them. */
  readonly untilS: number | undefined;
  readonly watch: readonly { readonly atS: number; readonly html: Html }[];
}

export interface ExplainStep extends Common {
  readonly kind: 'explain';
  readonly script: string;
  readonly reading: string;
  readonly atS: number;
}

export interface TryStep extends Common {
  readonly kind: 'try';
  readonly script: string;
  readonly show: readonly string[];
  readonly goal: string;
  readonly free: readonly Freedom[];
  readonly hints: readonly PreparedReply[];
  readonly reach: string;
  readonly after: Html | undefined;
}

export interface PreparedQuestion {
  readonly id: string;
  /** As it stands in the lesson: values, script and answers are drawn from it afresh. */
  readonly question: Question;
  readonly ask: Fillable;
  readonly after: Fillable | undefined;
  readonly choice: readonly { readonly text: Fillable; readonly because: Fillable }[] | undefined;
  readonly number: { readonly wrong: readonly PreparedReply[]; readonly otherwise: Fillable } | undefined;
  readonly pick: { readonly because: Fillable; readonly others: readonly Fillable[] } | undefined;
}

export interface CheckStep extends Common {
  readonly kind: 'check';
  readonly script: string;
  readonly questions: readonly PreparedQuestion[];
}

interface RecapStep extends Common {
  readonly kind: 'recap';
  readonly points: readonly Html[];
}

export type PreparedStep = ReadStep | PredictStep | RunStep | ExplainStep | TryStep | CheckStep | RecapStep;
