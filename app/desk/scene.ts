import { figuresOf, type Figures } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { parseScript, type Notice } from '@/lib/dive/script';
import { SET_RIGHT } from '@/lib/dive/set-right';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { DEFAULT_RULES, type RuleSettings } from '@/lib/rules/all';
import { watchDive, type Watch } from '@/lib/rules/watch';

/** Everything the pictures draw: one dive worked out. Made anew at every change of the script, never altered. */
export interface Scene {
  readonly dive: Dive;
  readonly timeline: Timeline;
  readonly figures: Figures;
  /** The same dive as instruments see it: first one that is set right, then the setups the script names. */
  readonly watches: readonly Watch[];
}

export type Staged = { ok: true; scene: Scene; warnings: readonly Notice[] } | { ok: false; errors: readonly Notice[] };

/** Setups watched side by side; a script may name more, which are left out. */
export const MOST_SETUPS = 4;

const SECONDS_SAMPLED_SINGLY = 4 * 3600;
const INTERVAL_EVERY_S = 10;

/** How finely a dive is sampled, s: each second while rules can still tell, more coarsely in dives of many hours. */
export function samplingOf(dive: Dive): { everyS: number; intervalEveryS: number } {
  const underWaterS = dive.steps.reduce((sum, step) => sum + (step.kind === 'switch' || step.kind === 'interval' ? 0 : step.durationS), 0);
  const everyS = Math.max(1, Math.ceil(underWaterS / SECONDS_SAMPLED_SINGLY));
  return { everyS, intervalEveryS: Math.max(everyS, INTERVAL_EVERY_S) };
}

/** Works a script out; `retired` is a scene no longer on screen, whose memory may be used again. */
export function stage(script: string, rules?: RuleSettings, retired?: Scene): Staged {
  const parsed = parseScript(script);
  if (!parsed.ok) return { ok: false, errors: parsed.errors };
  return { ok: true, scene: sceneOf(parsed.dive, rules, retired), warnings: parsed.warnings };
}

export function sceneOf(dive: Dive, rules: RuleSettings = DEFAULT_RULES, retired?: Scene): Scene {
  const { everyS, intervalEveryS } = samplingOf(dive);
  const timeline = computeTimeline(dive, everyS, { intervalEveryS, reuse: retired?.timeline });
  const truth = { timeline, figures: figuresOf(timeline, retired?.figures) };
  const setups = [SET_RIGHT, ...(dive.settings.setups ?? []).slice(0, MOST_SETUPS)];
  const watches = setups.map((setup, index) => watchDive(dive, setup, rules, everyS, { truth, intervalEveryS, reuse: retired?.watches[index] }));
  return { dive, ...truth, watches };
}
