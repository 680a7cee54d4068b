import { plannedAt } from '../../ascent/plan/ascent-start';
import { figuresOf } from '../../ascent/figures';
import type { Step } from '../../dive/dive';
import { computeTimeline } from '../../dive/timeline';
import type { SettingsSet } from './explain-settings';
import type { Comparison } from './readings-compared';
import { believedDive, legsForgottenAt, type UnitSettings } from './unit-fit';

/** How much longer a stay would have to be for two settings to show different figures, and which. */
export interface TellingMinute {
  readonly depthM: number;
  /** From 1 on. */
  readonly minutes: number;
  readonly shown: readonly [ShownThen, ShownThen];
}

export interface ShownThen {
  readonly settings: UnitSettings;
  /** Whole minutes, rounded down; at most 99. */
  readonly noStopMin: number;
  readonly stopM: number;
}

const LONGEST_MIN = 60;

/**
 * Looks for the first whole minute that the longest stay at the greatest depth would have to go on for until the two
 * settings farthest apart, of those that the record cannot tell apart, show another no-stop time by two minutes or
 * another first stop. Undefined where there is none within the hour, or nothing to tell apart.
 */
export function tellingMinute(
  { dive }: Comparison,
  sets: readonly SettingsSet[],
  others: readonly SettingsSet[],
): TellingMinute | undefined {
  const pair = farthestApart(sets, others);
  const held = deepestStay(dive.steps);
  if (!pair || !held) return undefined;
  const { steps, depthM } = held;
  const longer = [...steps, ...Array.from({ length: LONGEST_MIN }, (): Step => ({ kind: 'stay', durationS: 60 }))];
  const figures = pair.map((settings) => {
    const believed = believedDive({ ...dive, steps: longer, lines: [] }, settings);
    const timeline = computeTimeline(believed, 60, {
      intervalEveryS: 3600,
      freshAtLegs: legsForgottenAt(believed, settings.forgotBefore),
    });
    return { settings, timeline, figures: figuresOf(timeline, believed.settings) };
  });
  const endS = figures[0]!.timeline.timeS.at(-1)!;
  const showing = (minutes: number) =>
    figures.map(({ settings, timeline, figures: seen }): ShownThen => {
      const wantedS = endS - (LONGEST_MIN - minutes) * 60;
      let at = timeline.length - 1;
      while (at > 0 && timeline.timeS[at]! > wantedS + 1e-6) at -= 1;
      return {
        settings,
        noStopMin: Math.min(99, Math.floor(seen.noStopMin[at]! + 1e-6)),
        stopM: plannedAt(timeline, seen, at).stops[0]?.depthM ?? 0,
      };
    });
  for (let minutes = 1; minutes <= LONGEST_MIN; minutes += 1) {
    const [one, other] = showing(minutes) as [ShownThen, ShownThen];
    if (Math.abs(one.noStopMin - other.noStopMin) >= 2 || one.stopM !== other.stopM)
      return { depthM, minutes, shown: [one, other] };
  }
  return undefined;
}

/** The two corners of the first set, or it and another site where there is only one pair in it. */
function farthestApart(
  sets: readonly SettingsSet[],
  others: readonly SettingsSet[],
): readonly UnitSettings[] | undefined {
  const [first] = sets;
  if (!first) return undefined;
  const other = sets[1] ?? others[0];
  const [from, to] = [first.pairs[0], first.pairs.at(-1)];
  if (from && to && (to.low - from.low > 5 || to.high - from.high > 5))
    return [from, to].map(({ low, high }) => ({
      ...first.best.settings,
      gradientFactors: { low: low / 100, high: high / 100 },
    }));
  return other ? [first.best.settings, other.best.settings] : undefined;
}

/** The steps up to the end of the longest stay within 3 m of the greatest depth; undefined where there is none. */
function deepestStay(steps: readonly Step[]): { readonly steps: readonly Step[]; readonly depthM: number } | undefined {
  const deepestM = steps.reduce((most, step) => ('toM' in step ? Math.max(most, step.toM) : most), 0);
  let depthM = 0;
  let last = -1;
  let lastM = 0;
  steps.forEach((step, i) => {
    if ('toM' in step) depthM = step.toM;
    if (step.kind !== 'interval' && depthM >= deepestM - 3 && depthM > 0) {
      last = i;
      lastM = depthM;
    }
  });
  return last < 0 ? undefined : { steps: steps.slice(0, last + 1), depthM: lastM };
}
