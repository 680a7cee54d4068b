import type { RateLimit } from './rate-limits';

/**
 * One thing about a rule that can be set: what it is unless told otherwise, and what it may be. Plain data, so that
 * rules at work carry no checker with them: `rule-settings.ts` makes the checks out of it.
 */
export interface Setting<Value = unknown> {
  readonly usual: Value;
  readonly may: Range | Choices | 'be on or off' | 'be a rate limit';
}

/** A number from one to another, both allowed; `whole` without a fraction. */
interface Range {
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
}

interface Choices {
  readonly be: readonly (string | number)[];
}

/** The settings of a rule by name. */
export type SettingList = Readonly<Record<string, Setting>>;

/** What a list of settings is set to. */
export type ValuesOf<List extends SettingList> = {
  [Name in keyof List]: List[Name] extends Setting<infer Value> ? Value : never;
};

/** A setting that is on or off. */
export function onOff(usual: boolean): Setting<boolean> {
  return { usual, may: 'be on or off' };
}

/** A setting that is a number within a range; its unit is the end of its name. */
export function amount(usual: number, from: number, to: number): Setting<number> {
  return { usual, may: { from, to, whole: false } };
}

/** A setting that is a whole number within a range. */
export function count(usual: number, from: number, to: number): Setting<number> {
  return { usual, may: { from, to, whole: true } };
}

/** A setting that is one of a few values. */
export function oneOf<const Value extends string | number>(
  be: readonly Value[],
  usual: NoInfer<Value>,
): Setting<Value> {
  return { usual, may: { be } };
}

/** A setting that is a limit of the rate of ascent: one for all depths, or by bands of depth. */
export function rateLimit(usual: RateLimit): Setting<RateLimit> {
  return { usual, may: 'be a rate limit' };
}

/** Every setting as it is unless told otherwise. */
export function usualValues<List extends SettingList>(list: List): ValuesOf<List> {
  return Object.fromEntries(Object.entries(list).map(([name, { usual }]) => [name, usual])) as ValuesOf<List>;
}
