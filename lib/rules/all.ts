import type { UnitSystem } from '../quantity/unit-system';
import { sentence, type EventKind, type RuleEvent } from './event';
import { flyingWait } from './surface/flying-wait';
import { imposedStop } from './imposed-stop';
import { lockOut } from './lock-out';
import { longerSafetyStop } from './longer-safety-stop';
import { memoryLost } from './memory';
import { rateWatch } from './rate-watch';
import { requiredStops } from './required-stops';
import type { Moment, Rule } from './rule';
import { safetyStop } from './safety-stop';
import { usualValues, type SettingList, type ValuesOf } from './settings/setting';
import { slowedWashoutSettings, type SlowedWashoutSettings } from './settings/slowed-washout-settings';
import { tighterLimits } from './tighter-limits';
import type { Unit } from './unit/unit';

/**
 * Every rule, in the order they are stepped: what one makes of a sample, those after it see at the same sample. A new
 * rule is a file of its own and a place in this list.
 */
export const RULES = [
  rateWatch,
  tighterLimits,
  imposedStop,
  longerSafetyStop,
  requiredStops,
  lockOut,
  safetyStop,
  flyingWait,
] as const;

type ListedRule = (typeof RULES)[number];
export type RuleId = ListedRule['id'];

/** Each rule on or off with its numbers, and the what-if kept apart from them; `rule-settings.ts` checks those from outside. */
export type RuleSettings = { [Own in ListedRule as Own['id']]: ValuesOf<Own['settings']> } & {
  slowedWashout: SlowedWashoutSettings;
};

/** The rules as they are unless someone sets them. */
export const DEFAULT_RULES = Object.fromEntries([
  ...RULES.map(({ id, settings }) => [id, usualValues(settings)]),
  ['slowedWashout', usualValues(slowedWashoutSettings)],
]) as RuleSettings;

const KINDS: readonly EventKind<string, never>[] = [
  memoryLost,
  ...RULES.flatMap((one): readonly EventKind<string, never>[] => one.events),
];
export type RuleEventKind = ListedRule['events'][number]['kind'] | typeof memoryLost.kind;

/** Every kind of event with what it means, in one line. */
export const EVENT_KINDS = Object.fromEntries(KINDS.map(({ kind, meaning }) => [kind, meaning])) as Readonly<
  Record<RuleEventKind, string>
>;

const kindByName = new Map(KINDS.map((kind) => [kind.kind, kind]));

/** The event as a plain sentence in the units a person reads. */
export function eventText(event: Pick<RuleEvent, 'kind' | 'at' | 'numbers'>, system: UnitSystem): string {
  return sentence(kindByName.get(event.kind)!, event.at, event.numbers as never, system);
}

/** A rule at work in a unit, with its own state and settings. */
export interface RunningRule {
  readonly id: RuleId;
  step(now: Moment, unit: Unit): void;
}

/** The rules that are on, in order, as in a unit just switched on. */
export function switchedOn(settings: RuleSettings): RunningRule[] {
  return RULES.flatMap((one) =>
    settings[one.id].on ? [running(one as AnyRule, settings[one.id] as unknown as ValuesOf<SettingList>)] : [],
  );
}

// Which settings and which state belong to which rule is known where the rule is declared.
type AnyRule = Rule<RuleId, SettingList, unknown, unknown>;

function running(own: AnyRule, settings: ValuesOf<SettingList>): RunningRule {
  const state = own.begin();
  return { id: own.id, step: (now, unit) => own.step(state, now, settings, unit) };
}
