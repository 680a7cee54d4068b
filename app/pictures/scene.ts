import { figuresOf, type Figures } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { parseScript, type Notice } from '@/lib/dive/script';
import { samplingOf, type Sampling } from '@/lib/dive/sampling';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import type { Setup } from '@/lib/dive/setup';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import type { RuleSettings } from '@/lib/rules/all';
import type { Watch } from '@/lib/rules/watch';

/** Everything the pictures draw: one dive worked out. Made anew at every change of the script, never altered. */
export interface Scene {
  readonly dive: Dive;
  readonly timeline: Timeline;
  readonly figures: Figures;
  /** The instruments that watch it: first one that is set right, then the setups the script names. */
  readonly setups: readonly Setup[];
  /** What instruments add to the model; when undefined, the rules as they usually are. */
  readonly rules: RuleSettings | undefined;
  /** What the instruments saw, once someone has asked (`units/scene-watches.ts`), and old memory to write it to. */
  readonly watched: { watches?: readonly Watch[] | undefined; spare?: readonly Watch[] | undefined };
}

export type Staged = { ok: true; scene: Scene; warnings: readonly Notice[] } | { ok: false; errors: readonly Notice[] };

/** Setups watched side by side; a script may name more, which are left out. */
export const MOST_SETUPS = 4;

const INTERVAL_EVERY_S = 10;

/** How finely the desk samples a dive. */
export function deskSampling(dive: Dive): Sampling {
  return samplingOf(dive, INTERVAL_EVERY_S);
}

/** Works a script out; `retired` is a scene no longer on screen, whose memory may be used again. */
export function stage(script: string, rules?: RuleSettings, retired?: Scene): Staged {
  const parsed = parseScript(script);
  if (!parsed.ok) return { ok: false, errors: parsed.errors };
  return { ok: true, scene: sceneOf(parsed.dive, rules, retired), warnings: parsed.warnings };
}

export function sceneOf(dive: Dive, rules?: RuleSettings, retired?: Scene): Scene {
  const { everyS, intervalEveryS } = deskSampling(dive);
  const timeline = computeTimeline(dive, everyS, { intervalEveryS, reuse: retired?.timeline });
  const setups = [SET_RIGHT, ...(dive.settings.setups ?? []).slice(0, MOST_SETUPS)];
  const spare = retired?.watched.watches ?? retired?.watched.spare;
  return {
    dive,
    timeline,
    figures: figuresOf(timeline, dive.settings, retired?.figures),
    setups,
    rules,
    watched: { spare },
  };
}
