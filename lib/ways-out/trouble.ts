import { ascentStartAt } from '../ascent/ascent-start';
import { figuresOf, type Figures } from '../ascent/figures';
import type { Limits } from '../ascent/limits';
import { ascentPlanner, type Schedule } from '../ascent/schedule';
import { standingAlong } from '../ascent/stop-state';
import type { Dive } from '../dive/dive';
import { legRateMMin } from '../dive/script/leg-rate';
import { computeTimeline, type Timeline } from '../dive/timeline';
import { boundSpans, type BoundSpan } from './bound-spans';

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
}

/** A dive worked out at its changes of step alone: what lies between them is followed exactly where it matters. */
export function worked(dive: Dive): Worked {
  const timeline = computeTimeline(dive, 1e9);
  let figures: Figures | undefined;
  return {
    timeline,
    limits: dive.settings,
    get figures() {
      return (figures ??= figuresOf(timeline, dive.settings));
    },
  };
}

/** Whether a stop is owed is asked so often while there is a ceiling, s: tissues turn slowly at one depth. */
const ASKED_EVERY_S = { changing: 2, steady: 20 };
/** The instant just before a ceiling is gone, s. */
const JUST_BEFORE_S = 1e-6;
function justBefore(fromS: number, toS: number): number {
  return Math.max(fromS, toS - JUST_BEFORE_S);
}

/** How closely the instant at which a stop becomes owed is told, s. */
const FOUND_S = 0.01;
const SAME_RATE_M_MIN = 1e-6;

/** Where a dive has a ceiling, and whether a stop is owed there: a ceiling is there and the planned way up has a stop. */
export class Owing {
  private spansFound: readonly BoundSpan[] | undefined;
  private readonly known = new Map<number, boolean>();
  private standing: ReturnType<typeof standingAlong> | undefined;

  /** From a dive of the day on, counted from 0; those before it are known to be free of it. */
  constructor(
    private readonly dive: Worked,
    private readonly fromDive = 0,
  ) {}

  private get spans(): readonly BoundSpan[] {
    const { timeline, limits } = this.dive;
    return (this.spansFound ??= [...boundSpans(timeline, limits.gradientFactors.high)].filter(
      (span) => this.diveOf(span) >= this.fromDive,
    ));
  }

  /** The first instant at which a ceiling is there, or a stop owed. */
  first(target: 'stop' | 'ceiling'): Trouble | undefined {
    for (const span of this.spans) {
      const diveNumber = this.diveOf(span);
      if (target === 'ceiling') return { timeS: span.fromS, diveNumber };
      let before = span.fromS;
      for (const timeS of this.asked(span)) {
        if (this.owes(timeS)) return { timeS: this.firstOwed(before, timeS), diveNumber };
        before = timeS;
      }
    }
    return undefined;
  }

  /**
   * A leg at an end of which it is there, by the end of a dive; where it is at none, it may be there all the same. A leg
   * at whose end it was in a dive much like this one is asked first.
   */
  seenIn(target: 'stop' | 'ceiling', byDive: number, likely: number | undefined): number | undefined {
    if (target === 'stop' && likely !== undefined) {
      const leg = this.dive.timeline.legs[likely];
      const within = leg && leg.diveNumber >= this.fromDive && leg.diveNumber <= byDive;
      if (within && this.owes(justBefore(leg.startS, leg.endS))) return likely;
    }
    const spans = this.spans.filter((span) => this.diveOf(span) <= byDive);
    const owed = ({ fromS, toS }: BoundSpan) => this.owes(justBefore(fromS, toS)) || this.owes(fromS);
    return (target === 'ceiling' ? spans[0] : spans.find(owed))?.leg;
  }

  private diveOf({ leg }: BoundSpan): number {
    return this.dive.timeline.legs[leg]!.diveNumber;
  }

  private owes(timeS: number): boolean {
    let owes = this.known.get(timeS);
    if (owes === undefined) {
      this.standing ??= standingAlong(this.dive.timeline, this.dive.figures);
      owes = this.standing(timeS).state === 'owed';
      this.known.set(timeS, owes);
    }
    return owes;
  }

  /** When to ask within a span so that nothing is missed. */
  private *asked({ fromS, toS, leg }: BoundSpan): Generator<number> {
    const { fromM, toM } = this.dive.timeline.legs[leg]!;
    yield fromS;
    if (!this.toldByEnds(leg)) {
      const everyS = fromM === toM ? ASKED_EVERY_S.steady : ASKED_EVERY_S.changing;
      for (let lookS = fromS + everyS; lookS < toS; lookS += everyS) yield lookS;
    }
    yield justBefore(fromS, toS);
  }

  /**
   * Whether asking at the ends of a stretch is enough. Climbing as the plan does, the way up from each instant is the rest of
   * that from the one before. At one depth each compartment goes one way, and so does, on the same line, whether it needs a
   * stop: those that fill need it at the end, those that empty at the beginning.
   */
  private toldByEnds(leg: number): boolean {
    const { timeline, limits } = this.dive;
    const { fromM, toM, startS, endS } = timeline.legs[leg]!;
    if (timeline.hasHelium || limits.carried.length > 0) return false;
    if (fromM === toM) return limits.gradientFactors.low === limits.gradientFactors.high;
    return toM < fromM && Math.abs(legRateMMin(fromM, toM, endS - startS) - limits.plan.ascentMMin) < SAME_RATE_M_MIN;
  }

  /** When a stop that is owed at `to`, and not at `from` unless that is the same, became so. */
  private firstOwed(from: number, to: number): number {
    let [before, after] = [from, to];
    while (after - before > FOUND_S) {
      const middle = (before + after) / 2;
      if (this.owes(middle)) after = middle;
      else before = middle;
    }
    return after;
  }
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
