import { figuresOf } from '../ascent/figures';
import { standingsAlong, type Standings } from '../ascent/standings';
import { legRateMMin } from '../dive/script/leg-rate';
import { computeTimeline } from '../dive/timeline';
import { boundSpans, type BoundSpan } from './bound-spans';
import type { Trouble, Worked } from './trouble';
import { SAME_RATE_M_MIN } from '../exposure/run-time-table';

/** Whether a stop is owed is asked so often while there is a ceiling, s: tissues turn slowly at one depth. */
const ASKED_EVERY_S = { changing: 2, steady: 20 };
/** The instant just before a ceiling is gone, s. */
const JUST_BEFORE_S = 1e-6;
/** How closely the instant at which a stop becomes owed is told, s. */
const FOUND_S = 0.01;

/** An instant, and where it lies in its leg: what is so there in one dive is likely so in another much like it. */
export interface Place {
  readonly timeS: number;
  readonly leg: number;
  /** Which part of the leg lies before it, 0–1. */
  readonly share: number;
}

/** Where a dive has a ceiling, and whether a stop is owed there: a ceiling is there and the planned way up has a stop. */
export class Owing {
  private spansFound: readonly BoundSpan[] | undefined;
  private readonly known = new Map<number, boolean>();
  private standings: Standings | undefined;
  private sampled = false;

  /** From a dive of the day on, counted from 0; those before it are known to be free of it. */
  constructor(
    private readonly dive: Worked,
    private readonly fromDive = 0,
  ) {}

  private get spans(): readonly BoundSpan[] {
    const { timeline, limits } = this.dive;
    return (this.spansFound ??= [...boundSpans(timeline, limits.gradientFactors.high)].filter(
      (span) => this.diveOf(span.leg) >= this.fromDive,
    ));
  }

  /** The first instant at which a ceiling is there, or a stop owed; of a stop roughly, unless asked exactly. */
  first(target: 'stop' | 'ceiling', exactly: boolean): Trouble | undefined {
    for (const span of this.spans) {
      const diveNumber = this.diveOf(span.leg);
      if (target === 'ceiling') return { timeS: span.fromS, diveNumber };
      let before = span.fromS;
      for (const timeS of this.asked(span)) {
        if (this.owes(timeS)) return { timeS: exactly ? this.firstBetween(before, timeS) : timeS, diveNumber };
        before = timeS;
      }
    }
    return undefined;
  }

  /**
   * A place at which it is there by the end of a dive, found quickly; where none is found, it may be there all the same.
   * Places where it was in dives much like this one are asked first.
   */
  seen(target: 'stop' | 'ceiling', byDive: number, likely: Place | undefined): Place | undefined {
    const spans = () => this.spans.filter(({ leg }) => this.diveOf(leg) <= byDive);
    if (target === 'ceiling') return spans()[0] && this.placeOf(spans()[0]!.fromS);
    const { legs } = this.dive.timeline;
    const like = likely && legs[likely.leg];
    for (const timeS of likely
      ? [likely.timeS, ...(like ? [like.startS + likely.share * (like.endS - like.startS)] : [])]
      : []) {
      const place = this.placeOf(timeS);
      const { diveNumber } = legs[place.leg]!;
      if (diveNumber >= this.fromDive && diveNumber <= byDive && this.owes(timeS)) return place;
    }
    for (const { fromS, toS } of spans())
      for (const timeS of [justBefore(fromS, toS), fromS]) if (this.owes(timeS)) return this.placeOf(timeS);
    return undefined;
  }

  placeOf(timeS: number): Place {
    const { legs } = this.dive.timeline;
    const leg = Math.max(
      0,
      legs.findLastIndex(({ startS }) => startS <= timeS),
    );
    const { startS, endS } = legs[leg]!;
    return { timeS, leg, share: endS > startS ? (timeS - startS) / (endS - startS) : 0 };
  }

  private diveOf(leg: number): number {
    return this.dive.timeline.legs[leg]!.diveNumber;
  }

  private owes(timeS: number): boolean {
    let owes = this.known.get(timeS);
    if (owes === undefined) {
      this.standings ??= standingsAlong(this.dive.timeline, this.dive.figures);
      owes = this.standings.at(timeS).state === 'owed';
      this.known.set(timeS, owes);
    }
    return owes;
  }

  /** When to ask within a span so that nothing is missed. */
  private *asked({ fromS, toS, leg }: BoundSpan): Generator<number> {
    const { fromM, toM } = this.dive.timeline.legs[leg]!;
    yield fromS;
    if (!this.toldByEnds(leg)) {
      this.sample();
      const everyS = fromM === toM ? ASKED_EVERY_S.steady : ASKED_EVERY_S.changing;
      for (let lookS = (Math.floor(fromS / everyS) + 1) * everyS; lookS < toS; lookS += everyS) yield lookS;
    }
    yield justBefore(fromS, toS);
  }

  /** Before many instants are asked after: a dive worked out at all of them once is quicker than each by itself. */
  private sample(): void {
    if (this.sampled) return;
    this.sampled = true;
    const { dive } = this.dive;
    if (!dive) return;
    const timeline = computeTimeline(dive, ASKED_EVERY_S.changing, { intervalEveryS: ASKED_EVERY_S.steady });
    this.standings = standingsAlong(timeline, figuresOf(timeline, dive.settings));
  }

  /**
   * Whether asking at the ends of a stretch is enough. Climbing as the plan does, the way up from each instant is the rest
   * of that from the one before. At one depth each compartment goes one way, and so does, on the same line, whether it
   * needs a stop: those that fill need it at the end, those that empty at the beginning.
   */
  private toldByEnds(leg: number): boolean {
    const { timeline, limits } = this.dive;
    const { fromM, toM, startS, endS } = timeline.legs[leg]!;
    if (timeline.hasHelium || limits.carried.length > 0) return false;
    if (fromM === toM) return limits.gradientFactors.low === limits.gradientFactors.high;
    return toM < fromM && Math.abs(legRateMMin(fromM, toM, endS - startS) - limits.plan.ascentMMin) < SAME_RATE_M_MIN;
  }

  /** When a stop that is owed at `to`, and not at `from` unless that is the same, became so. */
  private firstBetween(from: number, to: number): number {
    let [before, after] = [from, to];
    while (after - before > FOUND_S) {
      const middle = (before + after) / 2;
      if (this.owes(middle)) after = middle;
      else before = middle;
    }
    return after;
  }
}

function justBefore(fromS: number, toS: number): number {
  return Math.max(fromS, toS - JUST_BEFORE_S);
}
