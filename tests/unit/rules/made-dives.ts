import type * as z from 'zod';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import { setupSchema, type Setup } from '@/lib/dive/setup';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { watchDive, type Watch } from '@/lib/rules/watch';

export const down = (toM: number, durationS: number): Step => ({ kind: 'descend', toM, durationS });
export const up = (toM: number, durationS: number): Step => ({ kind: 'ascend', toM, durationS });
export const stay = (durationS: number): Step => ({ kind: 'stay', durationS });
export const rest = (durationS: number): Step => ({ kind: 'interval', durationS });

export function diveOf(steps: readonly Step[], settings: Partial<Settings> = {}): Dive {
  return { settings: { ...defaultSettings(), ...settings }, steps: [...steps], lines: [] };
}

export type RulesInput = z.input<typeof ruleSettingsSchema>;

export function setupOf(setup: Partial<z.input<typeof setupSchema>> = {}): Setup {
  return setupSchema.parse({ name: 'Unit', ...setup });
}

export function watched(
  steps: readonly Step[],
  rules: RulesInput = {},
  setup: Partial<z.input<typeof setupSchema>> = {},
): Watch {
  return watchDive(diveOf(steps), setupOf(setup), ruleSettingsSchema.parse(rules));
}

/** What was told, as "seconds kind", of one rule or of all. */
export function told({ events }: Watch, rule?: string): string[] {
  return events
    .filter((event) => rule === undefined || event.rule === rule)
    .map(({ timeS, kind }) => `${timeS} ${kind}`);
}

/** The sample at a time, which must be one. */
export function at({ timeline }: Watch, timeS: number): number {
  const sample = timeline.timeS.indexOf(timeS);
  if (sample < 0) throw new Error(`no sample at ${timeS} s`);
  return sample;
}
