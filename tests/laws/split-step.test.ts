import fc from 'fast-check';
import { expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { legsOf } from '@/lib/dive/legs';
import { writeScript } from '@/lib/dive/script';
import { splitStep } from '@/lib/dive/edit/split-step';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { anyDive, anyWrittenScript } from './dives';
import { law } from './law';
import { diveOf } from '../unit/read';

/** The most by which a figure may differ, in its own unit. */
const SAME = 1e-6;

function figured(dive: Dive, everyS: number) {
  const timeline = computeTimeline(dive, everyS);
  return { timeline, figures: figuresOf(timeline, dive.settings) };
}

it('a step cut in two leaves depth, tensions, ceiling and no-stop time as they were, at every moment', () => {
  let cuts = 0;
  law(
    fc.property(
      anyDive.chain((dive) => anyWrittenScript(writeScript(dive))),
      fc.nat(),
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      (script, which, share) => {
        const dive = diveOf(script);
        // A change of gas takes no time to cut.
        const lasting = dive.steps.flatMap((step, i) => ('durationS' in step ? [i] : []));
        if (lasting.length === 0) return;
        const cut = diveOf(splitStep(script, lasting[which % lasting.length]!, share));
        if (cut.steps.length === dive.steps.length) return;
        cuts += 1;
        expect(cut.steps).toHaveLength(dive.steps.length + 1);
        const { endS } = legsOf(dive);
        expect(Math.abs(legsOf(cut).endS - endS)).toBeLessThan(SAME);
        const [before, after] = [figured(dive, endS / 40 + 1), figured(cut, endS / 40 + 1)];
        before.timeline.timeS.forEach((timeS, i) => {
          const j = sampleAt(after.timeline, timeS + SAME);
          const same = (what: string, one: number, other: number) => {
            if (!(Math.abs(one - other) <= SAME) && one !== other)
              expect.fail(`${what} at ${timeS} s: ${one}, and ${other} when cut\n${script}`);
          };
          same('time', timeS, after.timeline.timeS[j]!);
          same('depth', before.timeline.depthM[i]!, after.timeline.depthM[j]!);
          for (let c = 0; c < COMPARTMENTS; c += 1)
            for (const gas of ['nitrogenBar', 'heliumBar'] as const)
              same(gas, before.timeline[gas][i * COMPARTMENTS + c]!, after.timeline[gas][j * COMPARTMENTS + c]!);
          same('ceiling', before.figures.ceilingM[i]!, after.figures.ceilingM[j]!);
          // Longer than anyone is told, it hangs on the last digit of a tension.
          const told = ({ figures }: typeof before, sample: number) => Math.min(figures.noStopMin[sample]!, 99);
          same('no-stop time', told(before, i), told(after, j));
        });
      },
    ),
    200,
  );
  // One draw in four has a step that can be cut.
  expect(cuts).toBeGreaterThan(20);
});
