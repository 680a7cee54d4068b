import type { Dimension } from './dimension';

/*
 * The little language of goals, answers and claims: numbers with units, facts with the moment they are asked for,
 * arithmetic, comparisons, and, or, not. Nothing in it can loop, call or reach outside the facts.
 */

/** A place in the expression's text, offsets from and to (exclusive). */
export type Place = readonly [number, number];

export type Expression =
  | {
      readonly is: 'amount';
      readonly value: number;
      readonly dimension: Dimension;
      /** Written without a unit. */ readonly bare: boolean;
      readonly place: Place;
    }
  | FactCall
  | { readonly is: 'name'; readonly name: string; readonly place: Place }
  | { readonly is: 'negative'; readonly of: Expression; readonly place: Place }
  | {
      readonly is: 'arithmetic';
      readonly sign: '+' | '-' | '*' | '/';
      readonly left: Expression;
      readonly right: Expression;
      readonly place: Place;
    }
  | { readonly is: 'function'; readonly name: FunctionName; readonly of: readonly Expression[]; readonly place: Place }
  | Comparison
  | { readonly is: 'both' | 'either'; readonly of: readonly Expression[]; readonly place: Place }
  | { readonly is: 'not'; readonly of: Expression; readonly place: Place };

export type ComparisonSign = '==' | '!=' | '<' | '<=' | '>' | '>=';

export interface Comparison {
  readonly is: 'comparison';
  readonly sign: ComparisonSign;
  readonly left: Expression;
  readonly right: Expression;
  readonly place: Place;
}

export const FUNCTION_NAMES = ['min', 'max', 'abs', 'floor', 'ceil', 'round'] as const;
export type FunctionName = (typeof FUNCTION_NAMES)[number];

/** A fact with what it is asked of. */
export interface FactCall {
  readonly is: 'fact';
  readonly name: string;
  readonly arguments: readonly FactArgument[];
  readonly at: WrittenMoment | undefined;
  /** The extreme over the dive instead of a moment. */
  readonly extreme: 'highest' | 'lowest' | undefined;
  /** Which dive of the day, from 1; the last when undefined. */
  readonly dive: number | undefined;
  /** Another script of the lesson, by name. */
  readonly script: string | undefined;
  /** A unit of the script, by name. */
  readonly unit: string | undefined;
  readonly place: Place;
}

/** An expression, or the name of an event. */
export type FactArgument = Expression | { readonly is: 'event'; readonly name: string; readonly place: Place };

export const NAMED_MOMENTS = ['start', 'arrival', 'leaving', 'surfacing', 'end'] as const;
export type NamedMoment = (typeof NAMED_MOMENTS)[number];

/** A moment of the dive. */
export type WrittenMoment =
  | { readonly is: 'time'; readonly minutes: Expression; readonly place: Place }
  | { readonly is: 'named'; readonly name: NamedMoment; readonly place: Place }
  | { readonly is: 'event'; readonly name: string; readonly place: Place }
  | {
      readonly is: 'shifted';
      readonly minutes: Expression;
      readonly direction: 1 | -1;
      readonly from: WrittenMoment;
      readonly place: Place;
    };

/** The named moments, each with what it means. */
export const MOMENT_MEANINGS: Readonly<Record<NamedMoment, string>> = {
  start: 'the dive leaves the surface',
  arrival: 'it first reaches its greatest depth',
  leaving:
    'it leaves the bottom: the end of the last step that does not climb and ends within a tenth of the greatest depth',
  surfacing: 'it comes to the surface',
  end: 'the script ends',
};
