import fc from 'fast-check';
import { expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { standingsAlong } from '@/lib/ascent/standings';
import { stopChanges } from '@/lib/ascent/stop-changes';
import { computeTimeline } from '@/lib/dive/timeline';
import { anyDay } from './arbitrary-dive';
import { law } from './law';

const LOOKS = 50;
/** Nearer to a change than this either side of it is right, s. */
const AT_ONCE_S = 1e-5;

it('between two changes of state the diver stands as the first of them told, however closely one looks', () => {
  law(
    fc.property(
      anyDay,
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
      fc.constantFrom(0.05, 0.4, 3),
      (dive, places, everyS) => {
        const timeline = computeTimeline(dive, 60);
        const figures = figuresOf(timeline, dive.settings);
        const changes = stopChanges(timeline, figures);
        const standings = standingsAlong(timeline, figures);
        const endS = timeline.timeS[timeline.length - 1]!;
        // Anywhere, and where much happens: before a change, whose neighbours are most easily passed over.
        const near = places.map((place) => changes[Math.floor(place * (changes.length - 1))]!.timeS);
        for (const fromS of [...places.map((place) => place * endS), ...near]) {
          for (let look = 0; look < LOOKS; look += 1) {
            const timeS = Math.min(endS, Math.max(0, fromS + (look - LOOKS / 2) * everyS));
            if (changes.some((change) => Math.abs(change.timeS - timeS) < AT_ONCE_S)) continue;
            const { state, stopM } = changes.findLast((change) => change.timeS <= timeS)!;
            expect({ timeS, ...standings.at(timeS) }).toEqual({ timeS, state, stopM });
          }
        }
      },
    ),
    25,
  );
});
