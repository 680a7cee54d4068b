import type { Dive } from '@/lib/dive/dive';
import { SET_RIGHT } from '@/lib/dive/set-right';
import { sampleAt } from '@/lib/dive/timeline';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { shownAt, type Shown } from '@/lib/rules/unit/shown';
import { watchDive } from '@/lib/rules/watch';

/** Rules are stepped at least this finely, s, however far apart the readings are asked for. */
const RULES_EVERY_S = 1;

export interface RuleEventReading {
  readonly timeS: number;
  readonly kind: string;
  readonly rule: string;
  readonly text: string;
  /** Name of the setup that tells it; absent for the unit that is set right. */
  readonly unit?: string;
}

/** What instruments show of a dive and tell on the way: one that is set right, and the setups the script names. */
export function ruleReadings(dive: Dive) {
  const right = watchDive(dive, SET_RIGHT, DEFAULT_RULES, RULES_EVERY_S);
  const named = (dive.settings.setups ?? []).map((setup) => watchDive(dive, setup, DEFAULT_RULES, RULES_EVERY_S));
  const events: RuleEventReading[] = [
    ...right.events.map(({ timeS, kind, rule, text }) => ({ timeS, kind, rule, text })),
    ...named.flatMap(({ events: told, setup }) =>
      told.map(({ timeS, kind, rule, text }) => ({ timeS, kind, rule, text, unit: setup.name })),
    ),
  ];
  return {
    events,
    at(timeS: number): { shown: Shown; setups?: { name: string; shown: Shown }[] } {
      const sample = sampleAt(right.timeline, timeS + 1e-6);
      return {
        shown: shownAt(right, sample),
        ...(named.length > 0 && {
          setups: named.map((watch) => ({ name: watch.setup.name, shown: shownAt(watch, sample) })),
        }),
      };
    },
  };
}
