import { sampleAt, type Timeline } from '../dive/timeline';
import { ascentStartAt } from './ascent-start';
import { ceilingOnLine, type Load } from './ceiling';
import type { Figures } from './figures';
import { ascentPlanner, type AscentStart, type Schedule } from './schedule';
import { startsAfter } from './start-after';
import { surelyFree } from './surely-free';

/**
 * How a diver stands towards stops. Two questions are asked at every instant: is there a ceiling now, and does the plan's
 * way up from here need a stop? `free`: neither; `clearing`: a ceiling that is gone before a direct ascent reaches it;
 * `filling`: none yet, but the way up takes up gas enough to need a stop; `owed`: both.
 */
export type StopState = 'free' | 'clearing' | 'filling' | 'owed';

/** The state that follows from the two questions. */
export function stopStateOf(ceilingM: number, stopOnTheWay: boolean): StopState {
  if (ceilingM > 0) return stopOnTheWay ? 'owed' : 'clearing';
  return stopOnTheWay ? 'filling' : 'free';
}

/** Whether a way up is more than a direct ascent; one without end is. */
export function needsStop({ stops, timeToSurfaceMin }: Pick<Schedule, 'stops' | 'timeToSurfaceMin'>): boolean {
  return stops.length > 0 || timeToSurfaceMin === Infinity;
}

/** From a moment on, how the diver stands and the depth of the first stop, m; 0 where the way up needs none. */
export interface StopChange {
  readonly timeS: number;
  readonly state: StopState;
  readonly stopM: number;
}

/**
 * Changes are looked for at whole multiples of these on the dive's clock, s, however finely the dive is sampled: while the
 * depth changes, and at one depth, where tissues turn slowly. A state that comes and goes between two looks is passed over.
 */
const LOOKED_EVERY_S = { changing: 2, steady: 20 };
/** A change is then found this closely, s. */
const FOUND_S = 1e-7;

const known = new WeakMap<Figures, readonly StopChange[]>();

/**
 * Every change of state, and of the first stop's depth, at its instant; the first is how the diver stands at the start.
 * It depends neither on the timeline's samples nor on how a climb is cut into steps. Worked out once for some figures.
 */
export function stopChanges(timeline: Timeline, figures: Figures): readonly StopChange[] {
  const before = known.get(figures);
  if (before) return before;
  const standing = standingAlong(timeline, figures);
  const changes = [standing(0)];
  const between = (one: StopChange, other: StopChange): void => {
    if (same(one, other)) return;
    if (other.timeS - one.timeS <= FOUND_S) {
      changes.push(other);
      return;
    }
    const middle = standing((one.timeS + other.timeS) / 2);
    between(one, middle);
    between(middle, other);
  };
  let last = changes[0]!;
  for (const { startS, endS, fromM, toM, interval } of timeline.legs) {
    const everyS = fromM === toM ? LOOKED_EVERY_S.steady : LOOKED_EVERY_S.changing;
    const begins = standing(startS);
    between(last, begins);
    last = begins;
    for (let look = Math.floor(startS / everyS) + 1; last.timeS < endS; look += 1) {
      // Once free at the surface a diver stays so, breathing air there.
      const nextS = interval && last.state === 'free' ? endS : Math.min(endS, look * everyS);
      const next = standing(nextS);
      between(last, next);
      last = next;
    }
  }
  known.set(figures, changes);
  return changes;
}

function same(one: StopChange, other: StopChange): boolean {
  return one.state === other.state && one.stopM === other.stopM;
}

/** How the diver stands at any instant of a timeline. */
export function standingAlong(timeline: Timeline, figures: Figures): (timeS: number) => StopChange {
  const planAscent = ascentPlanner(figures.limits, timeline);
  const { gradientFactors } = figures.limits;
  const isSurelyFree = surelyFree(timeline, figures.limits);
  const after = startsAfter(timeline, gradientFactors);
  const { compartments, surfaceBar, barPerMetre } = timeline;
  const load = ({ nitrogenBar, heliumBar, at }: AscentStart): Load => ({
    compartments,
    nitrogenBar,
    heliumBar,
    at,
    surfaceBar,
    barPerMetre,
  });
  return (timeS) => {
    const sample = sampleAt(timeline, timeS);
    const start = startAt(timeline, figures, after, sample, timeS);
    const ceilingM =
      timeS === timeline.timeS[sample]
        ? figures.ceilingM[sample]!
        : ceilingOnLine(load(start), gradientFactors, start.anchorM).depthM;
    if (ceilingM === 0 && isSurelyFree(start)) return { timeS, state: 'free', stopM: 0 };
    const schedule = planAscent(start, gradientFactors, true);
    return { timeS, state: stopStateOf(ceilingM, needsStop(schedule)), stopM: schedule.stops[0]?.depthM ?? 0 };
  };
}

/** Where an ascent begun at an instant, at a sample or after it, is planned from. */
function startAt(
  timeline: Timeline,
  figures: Figures,
  after: ReturnType<typeof startsAfter>,
  sample: number,
  timeS: number,
): AscentStart {
  const start = ascentStartAt(timeline, figures, sample);
  const minutes = (timeS - timeline.timeS[sample]!) / 60;
  if (!(minutes > 0)) return start;
  const { startS, endS, fromM, toM } = timeline.legs[timeline.leg[sample]!]!;
  return after(start, minutes, fromM === toM ? toM : fromM + ((toM - fromM) * (timeS - startS)) / (endS - startS));
}
