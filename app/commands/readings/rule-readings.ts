import type { Figures } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import type { Timeline } from '@/lib/dive/timeline';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { shownAt, type Shown } from '@/lib/rules/unit/shown';
import { watchDive, type WatchOptions } from '@/lib/rules/watch';

interface RuleEventReading {
  readonly timeS: number;
  readonly kind: string;
  readonly rule: string;
  readonly text: string;
  /** Name of the setup that tells it; absent for the unit that is set right. */
  readonly unit?: string;
}

/**
 * What instruments show of a dive and tell on the way: one that is set right, and the setups the script names. They
 * watch it every `everyS` seconds at the samples of `truth`.
 */
export function ruleReadings(
  dive: Dive,
  everyS: number,
  options: { readonly truth: { readonly timeline: Timeline; readonly figures: Figures } } & WatchOptions,
) {
  const right = watchDive(dive, SET_RIGHT, DEFAULT_RULES, everyS, options);
  const named = (dive.settings.setups ?? []).map((setup) => watchDive(dive, setup, DEFAULT_RULES, everyS, options));
  const events: RuleEventReading[] = [
    ...right.events.map(({ timeS, kind, rule, text }) => ({ timeS, kind, rule, text })),
    ...named.flatMap(({ events: told, setup }) =>
      told.map(({ timeS, kind, rule, text }) => ({ timeS, kind, rule, text, unit: setup.name })),
    ),
  ];
  return {
    events,
    at: (sample: number): { shown: Shown; setups?: { name: string; shown: Shown }[] } => ({
      shown: shownAt(right, sample),
      ...(named.length > 0 && {
        setups: named.map((watch) => ({ name: watch.setup.name, shown: shownAt(watch, sample) })),
      }),
    }),
  };
}
