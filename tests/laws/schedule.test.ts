import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ceilingAtGf, coefficientsOf, gradientFactorAt, inertBarOf } from '@/lib/ascent/ceiling';
import { creditedNoStopMin } from '@/lib/ascent/credited-no-stop';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { loadAt } from '@/lib/ascent/figures';
import { ascentPlanner, type AscentPart, type AscentStart, type Schedule } from '@/lib/ascent/plan/schedule';
import { needsStop } from '@/lib/ascent/stop-state';
import type { Dive, GradientFactors, Step } from '@/lib/dive/dive';
import { computeTimeline, gasAt, tissuesAt, type Timeline } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { limitBar } from '@/lib/tissue/limit';
import { bottomPhase } from './arbitrary-dive';
import { law } from './law';

/** Without shrinking: a dive of some hours, cut down a step at a time, would take those of a class. */
const ROUNDING_BAR = 1e-9;

/** Where an ascent begins at the end of a timeline. */
function startAtEnd(timeline: Timeline): AscentStart {
  const last = timeline.length - 1;
  return {
    depthM: timeline.depthM[last]!,
    gas: gasAt(timeline, last),
    ...tissuesAt(timeline, last),
    at: 0,
    anchorM: 0,
  };
}

/** The dive with the parts of an ascent as its last steps. */
function followed(dive: Dive, parts: readonly AscentPart[]): Dive {
  const steps = parts.flatMap(({ fromM, toM, minutes, gas }): Step[] => {
    if (minutes === 0) return [];
    const kind = toM < fromM ? 'ascend' : 'descend';
    return [
      { kind: 'switch', gas },
      toM === fromM ? { kind: 'stay', durationS: minutes * 60 } : { kind, toM, durationS: minutes * 60 },
    ];
  });
  return { ...dive, steps: [...dive.steps, ...steps] };
}

/**
 * How far over its gradient-factor line the worst compartment is at each sample from a time on, bar. The anchor sinks
 * with the ceiling at low while the dive is bound, and is let go when it is free again.
 */
function overLine(timeline: Timeline, gradientFactors: GradientFactors, startAnchorM: number, fromS: number): number[] {
  const over: number[] = [];
  let anchorM = startAnchorM;
  for (let i = 0; i < timeline.length; i += 1) {
    if (timeline.timeS[i]! < fromS) continue;
    const load = loadAt(timeline, i);
    const bound = ceilingAtGf(load, gradientFactors.high).depthM > 0;
    anchorM = bound ? Math.max(anchorM, ceilingAtGf(load, gradientFactors.low).depthM) : 0;
    const gf = gradientFactorAt(timeline.depthM[i]!, anchorM, gradientFactors);
    let worst = -Infinity;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const { a, b } = coefficientsOf(load, c);
      worst = Math.max(worst, inertBarOf(load, c) - limitBar(a, b, gf, timeline.ambientBar[i]!));
    }
    over.push(worst);
  }
  return over;
}

interface Planned {
  readonly dive: Dive;
  readonly bottom: Timeline;
  readonly schedule: Schedule;
}

const planned: fc.Arbitrary<Planned> = bottomPhase
  .map((dive) => {
    const bottom = computeTimeline(dive, 600);
    return { dive, bottom, schedule: ascentPlanner(dive.settings, bottom)(startAtEnd(bottom)) };
  })
  .filter(({ schedule }) => schedule.timeToSurfaceMin < 12 * 60);

const bottomEndS = ({ bottom }: Planned) => bottom.timeS[bottom.length - 1]!;

describe('a schedule', () => {
  it('keeps every compartment within its line at every second of the way up', () => {
    law(
      fc.property(planned, (plan) => {
        const timeline = computeTimeline(followed(plan.dive, plan.schedule.parts), 1);
        const worst = Math.max(
          ...overLine(timeline, plan.dive.settings.gradientFactors, plan.schedule.anchorM, bottomEndS(plan)),
        );
        if (worst > ROUNDING_BAR)
          expect.fail(
            `a compartment passes its line by ${worst} bar; ${JSON.stringify(plan.schedule.stops)}, anchor ${plan.schedule.anchorM}`,
          );
      }),
      400,
    );
  });

  it('has no stop that could be a unit shorter', () => {
    law(
      fc.property(planned, fc.nat(), (plan, pick) => {
        const { stops, parts, anchorM } = plan.schedule;
        fc.pre(stops.length > 0);
        const stop = stops[pick % stops.length]!;
        const unit = plan.dive.settings.plan.stopRoundingMin;
        const shorter = parts.map((part) =>
          part.fromM === part.toM && part.fromM === stop.depthM
            ? { ...part, minutes: Math.max(0, part.minutes - unit) }
            : part,
        );
        const timeline = computeTimeline(followed(plan.dive, shorter), 600);
        const worst = Math.max(...overLine(timeline, plan.dive.settings.gradientFactors, anchorM, bottomEndS(plan)));
        if (worst <= 0)
          expect.fail(`${stop.depthM} m for ${stop.minutes} min could be ${unit} min shorter: ${worst} bar`);
      }),
      300,
    );
  });

  it('takes the time its parts take, ends at the surface and names each stop among its parts', () => {
    law(
      fc.property(planned, ({ schedule: { parts, stops, timeToSurfaceMin }, bottom }) => {
        expect(parts.reduce((sum, part) => sum + part.minutes, 0)).toBeCloseTo(timeToSurfaceMin, 9);
        expect(parts.at(-1)?.toM).toBe(0);
        expect(parts[0]?.fromM).toBeCloseTo(bottom.depthM[bottom.length - 1]!, 9);
        parts.forEach((part, i) => i > 0 && expect(part.fromM).toBe(parts[i - 1]!.toM));
        expect(
          parts
            .filter((part) => part.fromM === part.toM)
            .map(({ fromM, minutes, gas }) => ({ depthM: fromM, minutes, gas })),
        ).toEqual(stops);
      }),
      200,
    );
  });

  it('stops at whole steps of depth, or at the last stop, for whole units of time', () => {
    law(
      fc.property(planned, ({ dive, schedule: { stops } }) => {
        const { stopRoundingMin, stopStepM, lastStopM } = dive.settings.plan;
        for (const { depthM, minutes } of stops) {
          expect(minutes / stopRoundingMin).toBeCloseTo(Math.round(minutes / stopRoundingMin), 9);
          expect(depthM >= lastStopM).toBe(true);
          if (depthM > lastStopM) expect(depthM / stopStepM).toBeCloseTo(Math.round(depthM / stopStepM), 9);
        }
      }),
      200,
    );
  });

  it('is the same from a planner that has planned other ascents under other limits before', () => {
    law(
      fc.property(planned, planned, (plan, other) => {
        const { gradientFactors } = plan.dive.settings;
        const planAscent = ascentPlanner(
          { ...plan.dive.settings, gradientFactors: other.dive.settings.gradientFactors },
          plan.bottom,
        );
        const start = startAtEnd(plan.bottom);
        planAscent(start);
        planAscent({ ...start, depthM: start.depthM / 2, gas: { o2: 0.3, he: 0.1 } });
        expect(planAscent(start, gradientFactors)).toEqual(plan.schedule);
      }),
      100,
    );
  });

  it('is shorter or as short with a higher limit at the surface', () => {
    law(
      fc.property(planned, ({ dive, bottom, schedule }) => {
        const gf = dive.settings.gradientFactors;
        const planAscent = ascentPlanner(dive.settings, bottom);
        const higher = planAscent(startAtEnd(bottom), { low: gf.low, high: gf.high + (1 - gf.high) / 2 });
        expect(higher.timeToSurfaceMin).toBeLessThanOrEqual(schedule.timeToSurfaceMin + 1e-9);
      }),
      100,
    );
  });
});

describe('the no-stop time with credit for the way up', () => {
  it('is where a direct ascent first needs a stop: none before it does, and none ever where it is without end', () => {
    law(
      fc.property(bottomPhase, fc.double({ min: 0, max: 1, noNaN: true }), (dive, share) => {
        const short: Dive = { ...dive, steps: [dive.steps[0]!, { kind: 'stay', durationS: 30 }] };
        const timeline = computeTimeline(short, 600);
        const planAscent = ascentPlanner(short.settings, timeline);
        const start = startAtEnd(timeline);
        const credited = creditedNoStopMin(short.settings, timeline, start, planAscent);
        if (credited === 0) return;
        const needsStopAfter = (minutes: number) => {
          const later = computeTimeline(
            { ...short, steps: [short.steps[0]!, { kind: 'stay', durationS: 30 + minutes * 60 }] },
            600,
          );
          return needsStop(planAscent(startAtEnd(later)));
        };
        if (credited === Infinity) {
          expect(needsStopAfter(NO_STOP_CAP_MIN * share)).toBe(false);
          return;
        }
        expect(needsStopAfter(Math.max(0, credited - 1e-5) * share)).toBe(false);
        expect(needsStopAfter(Math.max(0, credited - 1e-5))).toBe(false);
        expect(needsStopAfter(credited + 1e-5)).toBe(true);
      }),
      200,
    );
  });
});
