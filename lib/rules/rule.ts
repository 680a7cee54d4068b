import type { EventKind } from './event';
import type { SettingList, ValuesOf } from './settings/setting';
import type { Unit } from './unit/unit';

/** Depths closer than this are the same to a rule, m: which side of an edge rounding puts a diver on, tells nothing. */
export const ROUNDING_M = 1e-6;

/** How far a rule is other people's practice, too. */
export type Standing = 'published guidance' | 'common practice' | 'illustrative';

/** What a unit senses at one sample, and where in the day it is. Depths are those it shows, m. */
export interface Moment {
  readonly sample: number;
  readonly timeS: number;
  /** Since the sample before; 0 at the first. */
  readonly elapsedS: number;
  readonly depthM: number;
  readonly depthBeforeM: number;
  /** Averaged speed, m/min, positive upward. */
  readonly rateMMin: number;
  /** When the climb up to this sample began, s, and at what depth; this very sample when there was none. */
  readonly climbFromS: number;
  readonly climbFromM: number;
  readonly atSurface: boolean;
  /** The first sample at the surface after being under water. */
  readonly surfaces: boolean;
  /** The first sample of a dive. */
  readonly diveStarts: boolean;
  readonly diveNumber: number;
  readonly leg: number;
}

/** What has to be so of a rule's settings taken together, and what is said where it is not. */
export interface Condition<Values> {
  holds(settings: Values): boolean;
  readonly otherwise: string;
}

/**
 * One thing an instrument adds to the model: a small state machine stepped from sample to sample. It reads the moment
 * and the unit, and writes what it makes of them to the unit. The model's tensions are out of its reach.
 */
export interface Rule<Id extends string, Settings extends SettingList, State, Events> {
  readonly id: Id;
  readonly title: string;
  /** Why an instrument has such a rule, for a person to read. */
  readonly reason: string;
  readonly standing: Standing;
  readonly source?: string;
  /** Its settings with their defaults; `on` is always among them. */
  readonly settings: Settings;
  readonly must?: readonly Condition<ValuesOf<Settings>>[];
  /**
   * Which shipped lessons, by number, a unit shows other things in because this rule is on unless switched off. A rule
   * that is off says nothing: a lesson that switches it on knows why.
   */
  readonly changesLessons?: 'all' | readonly number[];
  readonly events: Events;
  /** The state of a unit just switched on. */
  begin(): State;
  step(state: State, now: Moment, settings: ValuesOf<Settings>, unit: Unit): void;
}

/** Declares a rule, keeping the types of its settings, state and events. */
export function rule<
  const Id extends string,
  Settings extends SettingList,
  State,
  const Events extends readonly EventKind<string, never>[],
>(own: Rule<Id, Settings, State, Events>): Rule<Id, Settings, State, Events> {
  return own;
}
