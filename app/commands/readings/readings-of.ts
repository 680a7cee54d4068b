import { cautions } from '@/content/cautions';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { needsStop, stopStateOf } from '@/lib/ascent/stop-state';
import type { Dive } from '@/lib/dive/dive';
import type { Notice } from '@/lib/dive/script';
import { isMultiple } from '@/lib/dive/sample-instants';
import { computeTimeline, gasAt, tissuesAt, type Timeline } from '@/lib/dive/timeline';
import { exposureReadings } from './exposure-readings';
import type { WayOutReading } from './ways-out-readings';
import { ruleReadings } from './rule-readings';

/** What the `readings` command tells of a dive: plain data, ready to be written out. Bar, metres, minutes, fractions. */
export interface Readings {
  readonly caution: string;
  readonly unknown: string;
  readonly warnings: readonly Notice[];
  /** What happens on the way, in order of time; each has its sentence in metric units. */
  readonly events: readonly ReadingEvent[];
  readonly samples: readonly SampleReadings[];
  /** What would have avoided what `--avoid` names; empty where the dive has none of it. */
  readonly waysOut?: readonly WayOutReading[];
  /** For a dive that has none of it: how much more it would have taken. */
  readonly howMuchMore?: readonly WayOutReading[];
}

interface ReadingEvent {
  readonly timeS: number;
  readonly kind: string;
  /** The rule it comes from; absent where it is a matter of gas supply. */
  readonly rule?: string;
  readonly text: string;
}

export type SampleReadings = ReturnType<typeof sampleReadings> &
  ReturnType<ReturnType<typeof exposureReadings>['at']> &
  ReturnType<ReturnType<typeof ruleReadings>['at']>;

/** Rules are stepped every so many seconds, however far apart the readings are asked for. */
const RULES_EVERY_S = 1;
/** Readings every so many seconds and at each change of step. */
export function readingsOf(dive: Dive, warnings: readonly Notice[], everyS: number): Readings {
  // Sampled as finely as rules need it, once for all; of these samples those asked for are told.
  const alsoEveryS = isMultiple(everyS, RULES_EVERY_S) ? [] : [everyS];
  const timeline = computeTimeline(dive, RULES_EVERY_S, { alsoEveryS });
  const figures = figuresOf(timeline, dive.settings);
  const exposure = exposureReadings(timeline, dive.settings);
  const rules = ruleReadings(dive, RULES_EVERY_S, { truth: { timeline, figures }, alsoEveryS });
  const events: ReadingEvent[] = [...exposure.events, ...rules.events];
  return {
    caution: cautions.general,
    unknown: cautions.unknown,
    warnings,
    events: events.sort((one, other) => one.timeS - other.timeS),
    samples: askedSamples(timeline, everyS).map((sample) => ({
      ...sampleReadings(timeline, figures, sample),
      ...exposure.at(sample),
      ...rules.at(sample),
    })),
  };
}

/** The samples at multiples of `everyS`, at the start of each leg and at the end. */
function askedSamples({ length, timeS, leg }: Timeline, everyS: number): number[] {
  return Array.from({ length }, (_, sample) => sample).filter((sample) => {
    return isMultiple(timeS[sample]!, everyS) || sample === length - 1 || leg[sample] !== leg[sample - 1];
  });
}

function sampleReadings(
  timeline: ReturnType<typeof computeTimeline>,
  figures: ReturnType<typeof figuresOf>,
  sample: number,
) {
  const now = figuresAt(timeline, figures, sample);
  const { nitrogenBar, heliumBar } = tissuesAt(timeline, sample);
  return {
    timeS: timeline.timeS[sample]!,
    depthM: timeline.depthM[sample]!,
    ambientBar: timeline.ambientBar[sample]!,
    gas: gasAt(timeline, sample),
    nitrogenBar: Array.from(nitrogenBar),
    heliumBar: Array.from(heliumBar),
    ceilingM: now.ceiling.depthM,
    ceilingAtLowM: now.ceilingAtLow.depthM,
    ceilingAtHighM: now.ceilingAtHigh.depthM,
    noStopMin: cappedMin(now.noStop.minutes),
    creditedNoStopMin: cappedMin(now.creditedNoStopMin),
    /** How the diver stands: free, clearing, filling or owed. */
    state: stopStateOf(now.ceiling.depthM, needsStop(now.schedule)),
    requiredStops: now.schedule.stops.map(({ depthM, minutes, gas }) => ({ depthM, minutes, gas })),
    timeToSurfaceMin: Number.isFinite(now.schedule.timeToSurfaceMin) ? now.schedule.timeToSurfaceMin : null,
    supersaturation: now.supersaturation.value,
    surfacingSupersaturation: now.surfacingSupersaturation.value,
    leadingCompartment: now.leadingCompartment,
    leading: {
      ceiling: now.ceiling.leader || null,
      noStop: now.noStop.leader || null,
      supersaturation: now.supersaturation.leader,
      surfacingSupersaturation: now.surfacingSupersaturation.leader,
    },
  };
}

/** Over the cap there is no figure, only "more than 99 min": null. */
function cappedMin(minutes: number): number | null {
  return minutes > NO_STOP_CAP_MIN ? null : minutes;
}
