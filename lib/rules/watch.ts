import { figuresOf, type Figures } from '../ascent/figures';
import type { Limits } from '../ascent/limits';
import type { Dive } from '../dive/dive';
import { legsOf } from '../dive/legs';
import type { Setup } from '../dive/setup';
import type { Timeline } from '../dive/timeline';
import type { Compartments } from '../tissue/coefficients';
import { RULES, switchedOn, type RuleSettings } from './all';
import { averagedRates } from './averaged-rate';
import { believedDive } from './unit/believed-dive';
import { believedTimeline } from './unit/believed-timeline';
import type { RuleEvent } from './event';
import { lockOut } from './lock-out';
import { memoryLost } from './memory';
import { PassingMoment } from './unit/passing-moment';
import { tightenedFactors } from './tighter-limits';
import { roomForTracks, track, type Tracks } from './unit/tracks';
import { Unit, type DiveSeen, type ToldByRule } from './unit/unit';

/** A dive as one unit saw it: what it works out for itself, what its rules made of it, and what it told. */
export interface Watch {
  readonly setup: Setup;
  readonly rules: RuleSettings;
  /** The dive as it was. */
  readonly dive: Dive;
  /** The dive as the unit takes it to be; the very same where it is right about everything. */
  readonly believed: Dive;
  /** What the unit believes: its own depths and tissues. They are the truth where it is set right. */
  readonly timeline: Timeline;
  /** The model's figures under the unit's own limits. */
  readonly figures: Figures;
  /** The same with the limits drawn in once, twice and so on by a rule, as far as that came about; the first is `figures`. */
  readonly drawnIn: readonly Figures[];
  /** All that was told, in order of time; the changes of how the diver stands are found when this is first read. */
  readonly events: readonly RuleEvent[];
  /** The same without what is found only when asked for. */
  readonly toldOnTheWay: readonly RuleEvent[];
  /** The dives, with what became of each; `tracks.divesKnown` says how many of them the unit knew of at a sample. */
  readonly dives: readonly DiveSeen[];
  readonly tracks: Tracks;
  /** Whether timeline and figures were made for this watch, and not taken from elsewhere. */
  readonly ownModel: boolean;
}

export interface WatchOptions {
  /** A watch no longer needed, whose memory is written over; it must not be read again. */
  readonly reuse?: Watch | undefined;
  /** The dive's own timeline and figures, sampled alike: a unit that is right about everything takes them over. */
  readonly truth?: { readonly timeline: Timeline; readonly figures: Figures } | undefined;
  /** Surface intervals may be sampled more sparsely, every so many seconds. */
  readonly intervalEveryS?: number | undefined;
  /** The timeline is sampled at multiples of these too, s; rules are not stepped there, so that they don't depend on it. */
  readonly alsoEveryS?: readonly number[] | undefined;
  /** Half-times and limits to use instead of the published ones the dive's settings name. */
  readonly compartments?: Compartments | undefined;
}

/** Has a unit watch a dive. The tensions are the model's alone: no rule changes them. */
export function watchDive(
  dive: Dive,
  setup: Setup,
  rules: RuleSettings,
  everyS = 1,
  options: WatchOptions = {},
): Watch {
  const { truth, intervalEveryS, alsoEveryS, compartments, reuse } = options;
  const believed = believedDive(dive, setup);
  const shared = truth && believed.dive === dive && believed.freshAtLegs.length === 0 ? truth : undefined;
  const own = reuse?.ownModel ? reuse : undefined;
  const timeline =
    shared?.timeline ??
    believedTimeline(believed, everyS, { reuse: own?.timeline, intervalEveryS, alsoEveryS, compartments });
  const figures = shared?.figures ?? figuresOf(timeline, believed.dive.settings, own?.figures);
  const drawnIn = [figures];
  const unit = new Unit(
    timeline,
    (times) => (drawnIn[times] ??= figuresOf(timeline, tightened(figures.limits, rules, times), reuse?.drawnIn[times])),
  );
  const tracks = roomForTracks(timeline.length, reuse?.tracks);
  averagedRates(timeline, legsOf(dive).legs, believed.depthFactor, rules.rateWatch.averageS, tracks.rateMMin);
  run(
    new PassingMoment(timeline, tracks.rateMMin, everyS, (alsoEveryS ?? []).length > 0),
    unit,
    rules,
    setup.mode === 'gauge',
    new Set(believed.freshAtLegs),
    tracks,
  );
  const toldOnTheWay = unit.events.sort((one, other) => one.timeS - other.timeS);
  let events: readonly RuleEvent[] | undefined;
  return {
    setup,
    rules,
    dive,
    believed: believed.dive,
    timeline,
    figures,
    drawnIn,
    get events() {
      return (events ??= inOrder(toldOnTheWay, unit.toldWhenAsked()));
    },
    toldOnTheWay,
    dives: unit.dives,
    tracks,
    ownModel: !shared,
  };
}

/** All events in order of time; at one instant in the order in which the rules are stepped. */
function inOrder(onTheWay: readonly RuleEvent[], whenAsked: readonly ToldByRule[]): readonly RuleEvent[] {
  const all = [...onTheWay];
  for (const { rule, events } of whenAsked) {
    for (const event of events) {
      const later = all.findIndex(
        (one) =>
          one.timeS > event.timeS ||
          (one.timeS === event.timeS && !events.includes(one) && placeOf(one.rule) >= placeOf(rule)),
      );
      all.splice(later < 0 ? all.length : later, 0, event);
    }
  }
  return all;
}

function placeOf(ruleId: string): number {
  return RULES.findIndex(({ id }) => id === ruleId);
}

function tightened(limits: Limits, rules: RuleSettings, times: number): Limits {
  return { ...limits, gradientFactors: tightenedFactors(limits.gradientFactors, rules.tighterLimits, times) };
}

/** The model's figures under the limits a unit goes by at a sample. */
export function figuresInForce({ drawnIn, tracks }: Watch, sample: number): Figures {
  return drawnIn[tracks.tightness[sample]!]!;
}

function run(
  now: PassingMoment,
  unit: Unit,
  rules: RuleSettings,
  gauge: boolean,
  freshAtLegs: ReadonlySet<number>,
  tracks: Tracks,
): void {
  const begin = () => (gauge ? [] : switchedOn(rules));
  let running = begin();
  let tracked = 0;
  while (now.next()) {
    // Between two looks the unit stands as it did.
    for (; tracked < now.sample; tracked += 1) track(tracks, unit, tracked, false);
    if (now.diveStarts) {
      if (freshAtLegs.has(now.leg)) {
        if (!gauge) unit.tell(memoryLost, now.timeS, { forgotten: unit.divesKnown });
        unit.forget();
        running = begin();
      }
      unit.startDive(now);
    }
    unit.record(now);
    const locked = unit.lockedUntilS > 0;
    for (const one of running) if (!locked || one.id === lockOut.id) one.step(now, unit);
    if (locked !== unit.lockedUntilS > 0) {
      unit.restart();
      running = begin();
    }
    track(tracks, unit, tracked, true);
    tracked += 1;
  }
}
