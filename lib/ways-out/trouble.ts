import { ascentStartAt } from '../ascent/plan/ascent-start';
import { figuresOf, type Figures } from '../ascent/figures';
import type { Limits } from '../ascent/limits';
import { ascentPlanner, type Schedule } from '../ascent/plan/schedule';
import type { Dive } from '../dive/dive';
import { computeTimeline, type Timeline } from '../dive/timeline';

/** What is asked after: a stop that is owed, a ceiling, or a rise that a unit calls too fast. */
export const TARGETS = ['stop', 'ceiling', 'slow-down'] as const;
export type Target = (typeof TARGETS)[number];

/** Where a dive has what is asked after, for the first time. */
export interface Trouble {
  readonly timeS: number;
  /** Which dive of the day, from 0; an interval belongs to the dive it follows. */
  readonly diveNumber: number;
}

/** A dive's tissues, and the limits and figures they are seen under; figures are worked out when first asked for. */
export interface Worked {
  readonly timeline: Timeline;
  readonly limits: Limits;
  readonly figures: Figures;
  /** The dive itself, where it may be worked out again at other instants. */
  readonly dive?: Dive;
}

/** A dive worked out at its changes of step alone: what lies between them is followed exactly where it matters. */
export function worked(dive: Dive): Worked {
  const timeline = computeTimeline(dive, 1e9);
  let figures: Figures | undefined;
  return {
    dive,
    timeline,
    limits: dive.settings,
    get figures() {
      return (figures ??= figuresOf(timeline, dive.settings));
    },
  };
}

/** The most that is owed at any change of step: minutes of stops, and the depth of the ceiling, m. */
export function mostOwed({ timeline, figures }: Pick<Worked, 'timeline' | 'figures'>): {
  readonly stopsMin: number;
  readonly ceilingM: number;
} {
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
