import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ascentStartAt } from '@/lib/ascent/plan/ascent-start';
import { figuresOf } from '@/lib/ascent/figures';
import { ascentPlanner, type AscentPart, type Schedule } from '@/lib/ascent/plan/schedule';
import type { Dive, Step } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { law } from './law';
import { anyToldDay, said, scriptOf, type ToldDay } from './second-model/told-day';
import { diveOf } from '../unit/read';

const SAME = 1e-6;

describe('whoever follows the plan', () => {
  it('finds at any moment of it exactly what is left of it', () => {
    law(
      fc.property(anyToldDay, anyShare, fc.nat(), (day, share, chance) => {
        const { planAt, timeline } = plansOf(day);
        const sample = chance % timeline.length;
        const whole = planAt(sample);
        if (whole.timeToSurfaceMin === Infinity || whole.timeToSurfaceMin === 0) return;
        const down = downMin(whole);
        const gone = down + (whole.timeToSurfaceMin - down) * share;
        const { left, where } = planAfter(day, sample, gone);
        expect(Math.abs(left.timeToSurfaceMin - (whole.timeToSurfaceMin - gone)), where).toBeLessThan(SAME);
      }),
      60,
    );
  });

  it('finds on a way down that it begins with the same stop and what is left, or one no deeper, or the climb open', () => {
    law(
      fc.property(anyToldDay, fc.array(fc.tuple(fc.nat(), anyShare), { minLength: 4, maxLength: 4 }), (day, picks) => {
        const { planAt, timeline, figures } = plansOf(day);
        const above = Array.from(timeline.depthM.keys()).filter(
          (sample) => timeline.depthM[sample]! < figures.ceilingM[sample]!,
        );
        for (const [chance, share] of picks) {
          const sample = above.length > 0 ? above[chance % above.length]! : chance % timeline.length;
          const whole = planAt(sample);
          const gone = downMin(whole) * share;
          if (gone === 0 || whole.timeToSurfaceMin === Infinity) continue;
          const { left, where } = planAfter(day, sample, gone);
          const stopM = whole.stops[0]!.depthM;
          const [first] = left.parts;
          if (first!.toM < first!.fromM) continue;
          // Asked anew, the way down never leads deeper; to the same stop it is the very same way.
          expect(first!.toM, where).toBeLessThan(stopM + SAME);
          if (first!.toM > stopM - SAME)
            expect(Math.abs(left.timeToSurfaceMin - (whole.timeToSurfaceMin - gone)), where).toBeLessThan(SAME);
        }
      }),
      180,
    );
  });
});

const anyShare = fc.double({ min: 0.02, max: 0.9, noNaN: true });

/** What the ascent planned from any sample of a day is. */
function plansOf(day: ToldDay) {
  const dive = diveOf(scriptOf(day));
  const timeline = computeTimeline(dive, 60);
  const figures = figuresOf(timeline, dive.settings);
  const planner = ascentPlanner(dive.settings, timeline);
  return { dive, timeline, figures, planAt: (sample: number) => planner(ascentStartAt(timeline, figures, sample)) };
}

/** How long a plan goes down at its beginning, min. */
function downMin({ parts }: Schedule): number {
  const end = parts.findIndex(({ fromM, toM }) => toM <= fromM);
  return parts.slice(0, end).reduce((sum, { minutes }) => sum + minutes, 0);
}

/** The ascent planned by who has followed the plan from a sample for so many minutes. */
function planAfter(day: ToldDay, sample: number, goneMin: number): { left: Schedule; where: string } {
  const { dive, timeline, planAt } = plansOf(day);
  const fromS = timeline.timeS[sample]!;
  const whole = planAt(sample);
  const follows = followed(dive, fromS, whole.parts);
  const then = computeTimeline(follows, 60, { alsoEveryS: [fromS + goneMin * 60] });
  const at = sampleAt(then, fromS + goneMin * 60 + 1e-7);
  const left = ascentPlanner(follows.settings, then)(ascentStartAt(then, figuresOf(then, follows.settings), at));
  return { left, where: `from ${fromS} s after ${goneMin} min: ${said(whole)}; then ${said(left)}\n${scriptOf(day)}` };
}

/** The dive as far as a moment, then the parts of an ascent. */
function followed(dive: Dive, fromS: number, parts: readonly AscentPart[]): Dive {
  const steps: Step[] = [];
  let timeS = 0;
  let depthM = 0;
  for (const step of dive.steps) {
    if (timeS >= fromS - 1e-9) break;
    if (step.kind === 'switch') {
      steps.push(step);
      continue;
    }
    const durationS = Math.min(step.durationS, fromS - timeS);
    const share = durationS / step.durationS;
    if ('toM' in step) {
      steps.push({ ...step, toM: depthM + (step.toM - depthM) * share, durationS });
      depthM += (step.toM - depthM) * share;
    } else steps.push({ ...step, durationS });
    timeS += step.durationS;
  }
  for (const { fromM, toM, minutes, gas } of parts) {
    if (minutes === 0) continue;
    steps.push({ kind: 'switch', gas });
    const durationS = minutes * 60;
    steps.push(
      fromM === toM ? { kind: 'stay', durationS } : { kind: toM < fromM ? 'ascend' : 'descend', toM, durationS },
    );
  }
  return { ...dive, steps };
}
