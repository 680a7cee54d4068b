import fc from 'fast-check';
import { expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { KEPT_EVERY_M, keptRun, scriptOfRun } from '@/lib/steer/kept-run';
import { FRESH_RUN, runDepthM, stepsAsSteered, steered, type SteerRun } from '@/lib/steer/run';
import { law } from './law';
import { diveOf } from '../unit/read';

/** Hands on a lever: a speed, m/min, held for so long, s. */
const pulls = fc.array(
  fc.tuple(
    fc.oneof(fc.constant(0), fc.constantFrom(3, 9, 18, -3, -9, -18), fc.double({ min: -40, max: 40, noNaN: true })),
    fc.oneof(fc.integer({ min: 1, max: 40 }), fc.double({ min: 0.05, max: 400, noNaN: true })),
  ),
  { minLength: 2, maxLength: 25 },
);
const systems = fc.constantFrom('metric' as const, 'imperial' as const);
const BASE: Dive = { settings: defaultSettings(), steps: [], lines: [] };

function runOf(pulled: readonly (readonly [number, number])[], everyM: number): SteerRun {
  // Under water to begin with, or too few of the draws would dive.
  const start = steered(FRESH_RUN, 20, 60, everyM);
  return pulled.reduce((run, [rateMMin, seconds]) => steered(run, rateMMin, seconds, everyM), start);
}

it('whatever was held level for five seconds is a stay in what is kept, and nothing is further off than is said', () => {
  law(
    fc.property(pulls, systems, (pulled, system) => {
      const run = runOf(pulled, KEPT_EVERY_M[system]);
      const kept = keptRun(BASE.settings, run, system)!;
      const clean = computeTimeline({ ...BASE, steps: [...kept.steps] }, 1);
      run.timesS.forEach((timeS, index) => {
        const untilS = run.timesS[index + 1];
        if (untilS === undefined || untilS - timeS < 5 || run.depthsM[index] !== run.depthsM[index + 1]) return;
        if (run.depthsM[index] === 0 || untilS > clean.timeS.at(-1)!) return;
        const leg = clean.legs.find(({ startS, endS }) => startS <= timeS && endS >= untilS);
        expect(leg, `from ${timeS} s to ${untilS} s`).toBeDefined();
        expect(leg!.fromM).toBe(leg!.toM);
      });
      const offM = Math.max(
        ...Array.from(clean.timeS, (timeS, i) => Math.abs(clean.depthM[i]! - runDepthM(run, timeS))),
      );
      expect(offM).toBeCloseTo(kept.depthOffM, 9);
      expect(kept.depthOffM).toBeLessThanOrEqual(0.3);
    }),
    150,
  );
});

it('the ceiling over the steps that are kept is that over the run, within a tenth of a metre and what depths are rounded to', () => {
  law(
    fc.property(pulls, (pulled) => {
      const run = runOf(pulled, 0.1);
      const kept = keptRun(BASE.settings, run, 'metric')!;
      const ceilingM = (dive: Dive) => figuresOf(computeTimeline(dive, 1), dive.settings).ceilingM;
      const was = ceilingM({ ...BASE, steps: stepsAsSteered(run) });
      const is = ceilingM({ ...BASE, steps: [...kept.steps] });
      is.forEach((depthM, i) => expect(Math.abs(depthM - was[i]!)).toBeLessThanOrEqual(0.15));
    }),
    60,
  );
});

it('what is kept reads back as the very steps it was kept as', () => {
  law(
    fc.property(pulls, systems, (pulled, system) => {
      const kept = keptRun(BASE.settings, runOf(pulled, KEPT_EVERY_M[system]), system)!;
      const dive = diveOf(scriptOfRun(BASE, kept, 'A run', system));
      const steps = [...kept.steps, ...kept.wayUp];
      expect(dive.steps.length).toBe(steps.length);
      dive.steps.forEach((step, index) => {
        const wanted = steps[index]!;
        expect(step.kind).toBe(wanted.kind);
        if ('durationS' in step && 'durationS' in wanted) expect(step.durationS).toBeCloseTo(wanted.durationS, 6);
        if ('toM' in step && 'toM' in wanted) expect(step.toM).toBeCloseTo(wanted.toM, 6);
      });
    }),
    100,
  );
});
