import type { Gas } from '../../physics/gas';
import type { Setting, Apply } from './settings/setting';

/** Part of a line, offsets from and to (exclusive). */
export type Span = readonly [from: number, to: number];

/** Something wrong in a line. */
export interface Trouble {
  readonly span: Span;
  readonly what: string;
  readonly mend: string;
  readonly fixes?: readonly Fix[] | undefined;
}

/** A text that, put in place of part of the line, mends it; it may go on over several lines. */
export interface Fix {
  readonly span: Span;
  readonly text: string;
  /** What a button says; the text itself when left out. */
  readonly label?: string;
}

/** Fixes that put one of some texts in a place. */
export function instead(span: Span, texts: readonly string[] | undefined): readonly Fix[] | undefined {
  return texts?.map((text) => ({ span, text }));
}

/** A value as read, or nothing when it did not read, and where it stands. */
export interface Part<T> {
  readonly span: Span;
  readonly value: T | undefined;
}

export type Speed = { readonly by: 'rate'; readonly mMin: number } | { readonly by: 'time'; readonly s: number };

export type StepRead =
  | {
      readonly kind: 'descend' | 'ascend';
      readonly depthM: Part<number> | undefined;
      readonly speed: Part<Speed> | undefined;
    }
  | { readonly kind: 'stay' | 'interval'; readonly timeS: Part<number> }
  | { readonly kind: 'switch'; readonly gas: Part<Gas> };

/** What one line of a script says by itself, before anything is known about the lines around it. */
export type LineRead =
  | { readonly as: 'remark' }
  | {
      readonly as: 'setting';
      readonly setting: Setting;
      readonly name: Span;
      readonly value: Part<Apply>;
      readonly troubles: readonly Trouble[];
    }
  | {
      readonly as: 'step';
      readonly step: StepRead;
      /** The words the step begins with. */
      readonly verb: Span;
      /** The step without the space and the remark around it. */
      readonly body: Span;
      readonly troubles: readonly Trouble[];
    }
  | { readonly as: 'unknown'; readonly troubles: readonly Trouble[] };
