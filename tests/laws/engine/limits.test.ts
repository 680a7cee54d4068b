import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breathedAt } from '@/lib/ascent/breathed';
import { inertBarOf, coefficientsOf } from '@/lib/ascent/ceiling';
import { figuresOf, loadAt } from '@/lib/ascent/figures';
import { noStop } from '@/lib/ascent/no-stop';
import { computeTimeline } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { limitBar } from '@/lib/tissue/limit';
import { anyDay, nitrogenDay } from '../arbitrary-dive';
import { law } from '../law';

/** How much the engine's own figures may differ because the sums were made in another order. */
const ROUNDING = 1e-9;

describe('no-stop time', () => {
  const anyStateOnAir = nitrogenDay
    .map((dive) => ({ timeline: computeTimeline(dive, 300), gf: dive.settings.gradientFactors.high }))
    .filter(({ timeline }) => timeline.length > 1);

  it('is never longer deeper, whatever was dived before', () => {
    law(
      fc.property(
        anyStateOnAir,
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        ({ timeline, gf }, depthM, furtherM) => {
          const load = loadAt(timeline, timeline.length - 1);
          const at = (m: number) =>
            breathedAt(timeline, timeline.gases[0]!, timeline.surfaceBar + m * timeline.barPerMetre);
          expect(noStop(load, at(depthM + furtherM), gf).minutes).toBeLessThanOrEqual(
            noStop(load, at(depthM), gf).minutes,
          );
        },
      ),
      300,
    );
  });

  it('is never longer with a lower limit', () => {
    law(
      fc.property(
        anyStateOnAir,
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0.3, max: 0.9, noNaN: true }),
        ({ timeline }, depthM, gf) => {
          const load = loadAt(timeline, timeline.length - 1);
          const breathed = breathedAt(
            timeline,
            timeline.gases[0]!,
            timeline.surfaceBar + depthM * timeline.barPerMetre,
          );
          expect(noStop(load, breathed, gf).minutes).toBeLessThanOrEqual(noStop(load, breathed, gf + 0.1).minutes);
        },
      ),
      300,
    );
  });

  it('is 0 exactly where there is a ceiling', () => {
    law(
      fc.property(anyDay, (dive) => {
        const { ceilingM, noStopMin } = figuresOf(computeTimeline(dive, 10), dive.settings);
        ceilingM.forEach((depthM, i) => {
          if (depthM > 0 !== (noStopMin[i] === 0)) expect.fail(`ceiling ${depthM} m with ${noStopMin[i]} min left`);
        });
      }),
      60,
    );
  });

  it('ends where the ceiling appears, if nothing changes', () => {
    law(
      fc.property(anyDay, (dive) => {
        const timeline = computeTimeline(dive, 10);
        const { ceilingM, noStopMin } = figuresOf(timeline, dive.settings);
        for (let i = 1; i < timeline.length; i += 1) {
          const leg = timeline.legs[timeline.leg[i - 1]!]!;
          const stepMin = (timeline.timeS[i]! - timeline.timeS[i - 1]!) / 60;
          if (leg.fromM !== leg.toM || noStopMin[i - 1] === 0 || Math.abs(noStopMin[i - 1]! - stepMin) < 1e-6) continue;
          if (ceilingM[i]! > 0 !== noStopMin[i - 1]! < stepMin)
            expect.fail(`${noStopMin[i - 1]} min left, yet the ceiling ${stepMin} min later is ${ceilingM[i]} m`);
        }
      }),
      60,
    );
  });
});

describe('the ceiling', () => {
  it('is 0 exactly while every compartment tolerates the surface at the high limit', () => {
    law(
      fc.property(anyDay, (dive) => {
        const timeline = computeTimeline(dive, 10);
        const { ceilingM } = figuresOf(timeline, dive.settings);
        const { high } = dive.settings.gradientFactors;
        for (let i = 0; i < timeline.length; i += 1) {
          const load = loadAt(timeline, i);
          let worstBar = -Infinity;
          for (let c = 0; c < COMPARTMENTS; c += 1) {
            const { a, b } = coefficientsOf(load, c);
            worstBar = Math.max(worstBar, inertBarOf(load, c) - limitBar(a, b, high, timeline.surfaceBar));
          }
          if (Math.abs(worstBar) < ROUNDING) continue;
          if (ceilingM[i]! > 0 !== worstBar > 0)
            expect.fail(`ceiling ${ceilingM[i]} m with a compartment ${worstBar} bar over the limit at the surface`);
        }
      }),
      60,
    );
  });

  it('lies between the ceilings at high and at low, and not below the anchor, which is there while the dive is bound', () => {
    law(
      fc.property(anyDay, (dive) => {
        const { low, high } = dive.settings.gradientFactors;
        const { ceilingM, ceilingAtLowM, ceilingAtHighM, anchorM } = figuresOf(
          computeTimeline(dive, 10),
          dive.settings,
        );
        ceilingM.forEach((depthM, i) => {
          const inOrder =
            ceilingAtHighM[i]! <= depthM + ROUNDING &&
            depthM <= ceilingAtLowM[i]! + ROUNDING &&
            // Without a line (one factor, or a dive that needs no stop) there is nothing to anchor.
            (low === high || ceilingAtHighM[i] === 0 ? anchorM[i] === 0 : ceilingAtLowM[i]! <= anchorM[i]! + ROUNDING);
          if (!inOrder)
            expect.fail(`high ${ceilingAtHighM[i]}, line ${depthM}, low ${ceilingAtLowM[i]}, anchor ${anchorM[i]}`);
        });
      }),
      60,
    );
  });
});
