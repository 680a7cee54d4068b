import { ascentStartAt } from '../ascent/ascent-start';
import { figuresOf, type Figures } from '../ascent/figures';
import { ascentPlanner, type Schedule } from '../ascent/schedule';
import type { Dive } from '../dive/dive';
import { samplingOf, type Sampling } from '../dive/sampling';
import { SET_RIGHT } from '../dive/set-right';
import type { Setup } from '../dive/setup';
import { computeTimeline, type Timeline } from '../dive/timeline';
import type { RuleSettings } from '../rules/all';
import { watchDive, type Watch } from '../rules/watch';

/** What is asked after: a stop that is owed, a ceiling, or a rise that a unit calls too fast. */
export const TARGETS = ['stop', 'ceiling', 'slow-down'] as const;
export type Target = (typeof TARGETS)[number];

/** Where a dive has what is asked after, for the first time. */
export interface Trouble {
  readonly timeS: number;
  /** Which dive of the day, from 0; an interval belongs to the dive it follows. */
  readonly diveNumber: number;
}

/** A dive worked out at a number of instants. */
export interface Worked {
  readonly timeline: Timeline;
  readonly figures: Figures;
}

/** The changes of step alone: what is so at one of them is so however finely a dive is sampled. */
export const TURNS: Sampling = { everyS: 1e9, intervalEveryS: 1e9 };

/** As finely as the desk samples. */
export function finely(dive: Dive): Sampling {
  return samplingOf(dive, 10);
}

/**
 * A dive worked out at a step of so many seconds, under water and in intervals, with its figures under its own limits.
 */
export function worked(dive: Dive, { everyS, intervalEveryS }: Sampling): Worked {
  const timeline = computeTimeline(dive, everyS, { intervalEveryS });
  return { timeline, figures: figuresOf(timeline, dive.settings) };
}

/** The first instant at which a ceiling is there, or a stop owed: a ceiling is there and the planned way up has a stop. */
export function firstOwed({ timeline, figures }: Worked, target: 'stop' | 'ceiling'): Trouble | undefined {
  let planAscent: ReturnType<typeof ascentPlanner> | undefined;
  for (let sample = 0; sample < timeline.length; sample += 1) {
    if (!(figures.ceilingM[sample]! > 0)) continue;
    if (target === 'stop') {
      planAscent ??= ascentPlanner(figures.limits, timeline);
      const { stops, timeToSurfaceMin } = planAscent(ascentStartAt(timeline, figures, sample));
      if (stops.length === 0 && timeToSurfaceMin < Infinity) continue;
    }
    return { timeS: timeline.timeS[sample]!, diveNumber: timeline.legs[timeline.leg[sample]!]!.diveNumber };
  }
  return undefined;
}

/** The most that is owed at any change of step: minutes of stops, and the depth of the ceiling, m. */
export function mostOwed({ timeline, figures }: Worked): { readonly stopsMin: number; readonly ceilingM: number } {
  const planAscent = ascentPlanner(figures.limits, timeline);
  let stopsMin = 0;
  let ceilingM = 0;
  for (let sample = 0; sample < timeline.length; sample += 1) {
    if (!(figures.ceilingM[sample]! > 0)) continue;
    ceilingM = Math.max(ceilingM, figures.ceilingM[sample]!);
    stopsMin = Math.max(stopsMin, minutesOf(planAscent(ascentStartAt(timeline, figures, sample))));
  }
  return { stopsMin, ceilingM };
}

function minutesOf({ stops }: Schedule): number {
  return stops.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** The dive as a unit watched it, by the rules given. */
export function watched(dive: Dive, rules: RuleSettings, truth?: Worked, setup: Setup = SET_RIGHT): Watch {
  const { everyS, intervalEveryS } = finely(dive);
  return watchDive(dive, setup, rules, everyS, { intervalEveryS, truth });
}

/** Every rise a unit calls too fast. */
export function breachesOf({ events, timeline }: Watch): Trouble[] {
  return events
    .filter(({ kind }) => kind === 'slow-down')
    .map(({ timeS }) => ({ timeS, diveNumber: timeline.legs.findLast(({ startS }) => startS <= timeS)!.diveNumber }));
}
