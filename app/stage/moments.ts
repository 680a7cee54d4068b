import { sampleAt, sampleFromS } from '@/lib/dive/timeline';
import { eventText } from '@/lib/rules/all';
import type { Watch } from '@/lib/rules/watch';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from '../pictures/scene';

/** A time worth stopping at before a class, and what happens then. */
export interface NamedTime {
  readonly timeS: number;
  readonly name: string;
  /** The model or a unit says something then; else the dive only turns. */
  readonly happens: boolean;
  /** A unit says it, in words that have the time. */
  readonly byUnit: boolean;
}

/** What is said of it while a reading is covered: what happens would give away what a class is to find. */
export const SOMETHING_HAPPENS = 'Something happens here.';

/** What the model and a unit say for the first time after one time of a dive, up to another, both in s, in order. */
export function happeningsIn(
  { timeline, figures }: Scene,
  watch: Watch,
  units: UnitSystem,
  afterS = -Infinity,
  toS = Infinity,
): readonly NamedTime[] {
  const found: NamedTime[] = [];
  const from = sampleAt(timeline, afterS);
  for (let i = from + 1; i < timeline.length && timeline.timeS[i]! <= toS; i += 1) {
    const [before, now] = [figures.ceilingM[i - 1]! > 0, figures.ceilingM[i]! > 0];
    if (before !== now)
      found.push({
        timeS: timeline.timeS[i]!,
        name: now ? 'A ceiling appears.' : 'The ceiling is gone.',
        happens: true,
        byUnit: false,
      });
  }
  // Where the readings first say so: an instant between two samples is still shown as the one before it.
  const sinceS = afterS < 0 ? afterS : timeline.timeS[from]!;
  for (const event of watch.events) {
    if (event.timeS <= sinceS || event.timeS > toS) continue;
    const timeS = sampleFromS(timeline, event.timeS);
    if (timeS <= toS) found.push({ timeS, name: eventText(event, units), happens: true, byUnit: true });
  }
  return found.sort((one, other) => one.timeS - other.timeS);
}

/** Moments closer together are one, s. */
const TOGETHER_S = 1;

/** Where the dive turns, where a ceiling comes and goes, and what the unit tells, in order. */
export function momentsOf(scene: Scene, watch: Watch, units: UnitSystem): readonly NamedTime[] {
  const found: NamedTime[] = [{ timeS: 0, name: 'The start.', happens: false, byUnit: false }];
  scene.timeline.legs.forEach((leg, index) => {
    const name = leg.interval
      ? 'Before the next dive.'
      : `Point ${index + 1}, ${leg.toM === 0 ? 'the surface' : sayDepth(leg.toM, units)}.`;
    found.push({ timeS: leg.endS, name, happens: false, byUnit: false });
  });
  found.push(...happeningsIn(scene, watch, units));
  found.sort((one, other) => one.timeS - other.timeS);

  const moments: NamedTime[] = [];
  for (const one of found) {
    const last = moments.at(-1);
    if (last && one.timeS - last.timeS < TOGETHER_S)
      moments[moments.length - 1] = {
        timeS: last.timeS,
        name: `${last.name} ${one.name}`,
        happens: last.happens || one.happens,
        byUnit: last.byUnit || one.byUnit,
      };
    else moments.push(one);
  }
  return moments;
}

/** How near the cursor counts as at a moment, s. */
export const AT_S = 0.5;

export function momentAfter(moments: readonly NamedTime[], cursorS: number): NamedTime | undefined {
  return moments.find(({ timeS }) => timeS > cursorS + AT_S);
}

export function momentBefore(moments: readonly NamedTime[], cursorS: number): NamedTime | undefined {
  return moments.findLast(({ timeS }) => timeS < cursorS - AT_S);
}

/** The place in the list of the moment the cursor stands at, or has passed last. */
export function momentIndexAt(moments: readonly NamedTime[], cursorS: number): number {
  return Math.max(
    0,
    moments.findLastIndex(({ timeS }) => timeS <= cursorS + AT_S),
  );
}
