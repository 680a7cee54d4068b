import { sampleFromS } from '@/lib/dive/timeline';
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
}

/** Moments closer together are one, s. */
const TOGETHER_S = 1;

/** Where the dive turns, where a ceiling comes and goes, and what the unit tells, in order. */
export function momentsOf({ timeline, figures }: Scene, watch: Watch, units: UnitSystem): readonly NamedTime[] {
  const found: NamedTime[] = [{ timeS: 0, name: 'The start.', happens: false }];
  timeline.legs.forEach((leg, index) => {
    const name = leg.interval
      ? 'Before the next dive.'
      : `Point ${index + 1}, ${leg.toM === 0 ? 'the surface' : sayDepth(leg.toM, units)}.`;
    found.push({ timeS: leg.endS, name, happens: false });
  });
  for (let i = 1; i < timeline.length; i += 1) {
    const [before, now] = [figures.ceilingM[i - 1]! > 0, figures.ceilingM[i]! > 0];
    if (before !== now)
      found.push({
        timeS: timeline.timeS[i]!,
        name: now ? 'A ceiling appears.' : 'The ceiling is gone.',
        happens: true,
      });
  }
  // Where the readings first say so: an instant between two samples is still shown as the one before it.
  for (const event of watch.events)
    found.push({ timeS: sampleFromS(timeline, event.timeS), name: eventText(event, units), happens: true });
  found.sort((one, other) => one.timeS - other.timeS);

  const moments: NamedTime[] = [];
  for (const one of found) {
    const last = moments.at(-1);
    if (last && one.timeS - last.timeS < TOGETHER_S)
      moments[moments.length - 1] = {
        timeS: last.timeS,
        name: `${last.name} ${one.name}`,
        happens: last.happens || one.happens,
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
