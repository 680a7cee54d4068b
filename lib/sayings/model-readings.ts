import { dayPlaceAt } from '../dive/day-clock';
import { needsStop, stopStateOf } from '../ascent/stop-state';
import type { FiguresNow } from '../ascent/figures';
import { gasAt, type Timeline } from '../dive/timeline';
import { gasName } from '../physics/gas';
import type { UnitSystem } from '../quantity/unit-system';
import { sayAll, type Reading, type Saying } from './saying';
import { ceilingNote, noStopNote, requiredStopNote, sayStop, type Standing } from './stop-state';

/** The model at one sample of a timeline. */
export interface ModelMoment {
  readonly timeline: Timeline;
  readonly sample: number;
  readonly now: FiguresNow;
}

/** How the diver stands towards stops, by the model. */
export function standingOf(moment: ModelMoment): Standing {
  const { timeline, sample, now } = moment;
  return {
    state: stopStateOf(now.ceiling.depthM, needsStop(now.schedule)),
    depthM: timeline.depthM[sample]!,
    ceilingM: now.ceiling.depthM,
    stop: firstStop(moment),
    noStopMin: now.noStop.minutes,
    noStopLeader: now.noStop.leader,
    creditedNoStopMin: now.creditedNoStopMin,
    ascentMMin: now.limits.plan.ascentMMin,
  };
}

/** The first stop of the way up; a plan that never opens has none in its list, and ends where it waits for ever. */
function firstStop({ timeline, sample, now: { schedule } }: ModelMoment): Standing['stop'] {
  const [stop] = schedule.stops;
  if (stop || !needsStop(schedule)) return stop;
  return { depthM: schedule.parts.at(-1)?.toM ?? timeline.depthM[sample]!, minutes: Infinity };
}

const dayPlaceOf = (timeline: Timeline, sample: number) => dayPlaceAt(timeline, timeline.timeS[sample]!);

/** What the model says at an instant: one line a reading. */
const MODEL_READINGS = {
  depth: {
    measure: 'depth',
    figure: ({ timeline, sample }) => timeline.depthM[sample]!,
    note: ({ timeline, sample }) => `on ${gasName(gasAt(timeline, sample))}`,
  },
  gas: { measure: null, name: 'Gas', words: ({ timeline, sample }) => gasName(gasAt(timeline, sample)) },
  time: {
    measure: 'runTimeS',
    figure: ({ timeline, sample }) => dayPlaceOf(timeline, sample)?.sinceS ?? timeline.timeS[sample]!,
    note: ({ timeline, sample }) => {
      const place = dayPlaceOf(timeline, sample);
      if (!place) return 'since the start';
      return place.between ? `after dive ${place.dive}` : `in dive ${place.dive}`;
    },
  },
  'no-stop': {
    measure: 'noStopMin',
    figure: ({ now }) => now.noStop.minutes,
    // While the way up itself needs a stop, what is left to an instant ascent is no time left.
    words: (moment) => (standingOf(moment).state === 'filling' ? 'none' : undefined),
    note: (moment, system) => noStopNote(standingOf(moment), system),
    leader: ({ now }) => now.noStop.leader,
  },
  'credited-no-stop': {
    measure: 'creditedNoStopMin',
    figure: ({ now }) => now.creditedNoStopMin,
  },
  ceiling: {
    measure: 'ceilingM',
    figure: ({ now }) => now.ceiling.depthM,
    note: (moment) => ceilingNote(standingOf(moment), moment.now.ceiling.leader),
    leader: ({ now }) => now.ceiling.leader,
    tone: ({ now }) => (now.ceiling.depthM > 0 ? 'stop' : 'plain'),
  },
  'required-stop': {
    measure: 'stopM',
    figure: (moment) => firstStop(moment)?.depthM ?? 0,
    text: (moment, system) => {
      const stop = firstStop(moment);
      return stop && sayStop(stop, system);
    },
    note: (moment, system) => requiredStopNote(standingOf(moment), system),
    tone: (moment) => (firstStop(moment) ? 'stop' : 'plain'),
  },
  'time-to-surface': {
    measure: 'timeToSurfaceMin',
    figure: ({ now }) => now.schedule.timeToSurfaceMin,
    note: ({ now: { schedule } }) =>
      schedule.timeToSurfaceMin === Infinity ? 'no stop there is ever long enough' : stopsNote(schedule.stops.length),
  },
  supersaturation: {
    measure: 'supersaturation',
    figure: ({ now }) => now.supersaturation.value,
    note: ({ now }) => `now, compartment ${now.supersaturation.leader}`,
    leader: ({ now }) => now.supersaturation.leader,
  },
  'surfacing-supersaturation': {
    measure: 'supersaturation',
    name: 'On surfacing',
    figure: ({ now }) => now.surfacingSupersaturation.value,
    note: ({ now }) => `if up this instant, compartment ${now.surfacingSupersaturation.leader}`,
    leader: ({ now }) => now.surfacingSupersaturation.leader,
  },
} as const satisfies Readonly<Record<string, Reading<ModelMoment>>>;

export type ModelReadingId = keyof typeof MODEL_READINGS;

/** What the model says at an instant, by reading. */
export function modelSayings(moment: ModelMoment, system: UnitSystem): Readonly<Record<ModelReadingId, Saying>> {
  return sayAll<ModelReadingId, ModelMoment>(MODEL_READINGS, moment, system);
}

function stopsNote(count: number): string {
  if (count === 0) return 'no stops on the way';
  return count === 1 ? 'one stop on the way' : `${count} stops on the way`;
}
