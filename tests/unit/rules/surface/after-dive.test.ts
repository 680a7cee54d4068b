import { describe, expect, it } from 'vitest';
import flying from '@/content/published/flying.json';
import { ceilingAtGf } from '@/lib/ascent/ceiling';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { atmosphereBar } from '@/lib/physics/atmosphere';
import { afterDiveAt } from '@/lib/rules/surface/after-dive';
import { explainAltitudeWait } from '@/lib/rules/surface/altitude-wait';
import { DESATURATED_BAR, surfaceWashout } from '@/lib/rules/surface/desaturation';
import { flyingGuideline } from '@/lib/rules/surface/flying-guideline';
import { minutesUntil, restingAt, nitrogenAfter } from '@/lib/rules/surface/surface-interval';
import type { DiveSeen } from '@/lib/rules/unit/unit';
import { at, diveOf, down, rest, stay, up, watched } from '../made-dives';

const TRIMIX = { o2: 0.18, he: 0.45 };

const seen = (startH: number, surfacedH: number, requiredStop = false): DiveSeen => ({
  diveNumber: 0,
  startS: startH * 3600,
  surfacedS: surfacedH * 3600,
  maxDepthM: 20,
  requiredStop,
  breaches: 0,
});

describe('what has washed out at the surface', () => {
  it('is told of both gases together, against what nitrogen there is at rest', () => {
    const timeline = computeTimeline(diveOf([down(40, 120), stay(900), up(0, 300), rest(3600)], { gas: TRIMIX }), 60);
    const [surfaced, later] = [1320, 4920].map((timeS) => timeline.timeS.indexOf(timeS));
    const [then, now] = [surfaced!, later!].map((sample) => restingAt(timeline, sample));
    surfaceWashout(timeline, surfaced!, later!).forEach(({ compartment, excessThenBar, excessNowBar, gone }, c) => {
      const held = (of: typeof then) => of![c]!.nitrogenBar + of![c]!.heliumBar - of![c]!.settledBar;
      expect(compartment).toBe(c + 1);
      expect(excessThenBar).toBeCloseTo(held(then), 12);
      expect(excessNowBar).toBeCloseTo(held(now), 12);
      if (excessThenBar > 0) expect(gone).toBeCloseTo(1 - held(now) / held(then), 12);
      else expect(gone).toBeNull();
    });
    expect(then![0]!.heliumBar).toBeGreaterThan(0.5);
  });
});

describe('the published wait before flying', () => {
  it.each([
    ['one dive with no required stop', [seen(0, 1)], 12],
    ['two dives on a day', [seen(0, 1), seen(3, 4)], 18],
    ['a dive on each of two days', [seen(0, 1), seen(24, 25)], 18],
    ['a dive three days after another', [seen(0, 1), seen(73, 74)], 12],
  ])('after %s', (_, dives, hours) => {
    expect(flyingGuideline(dives, 24)!.hours).toBe(hours);
  });

  it('is the workshop’s: 12 h, 18 h, and no figure after required stops', () => {
    expect(flying.waits.map(({ hours }) => hours)).toEqual([12, 18, null]);
    expect(flyingGuideline([seen(0, 1)], 24)!.source).toContain('Flying After Recreational Diving Workshop');
  });

  it.each([[[seen(0, 1, true)]], [[seen(0, 1, true), seen(3, 4)]]])(
    'after required stops is the setting that stands in, and says so',
    (dives) => {
      expect(flyingGuideline(dives, 30)).toMatchObject({
        hours: 30,
        standIn: expect.stringContaining('gives no figure: substantially longer than 18 h'),
      });
    },
  );

  it('is none where no dive is known', () => {
    expect(flyingGuideline([], 24)).toBeNull();
  });
});

const single = [down(18, 120), stay(1800), up(5, 100), stay(180), up(0, 40), rest(20 * 3600)];
const surfacedS = 2240;

describe('after the dive', () => {
  const watch = watched(single);
  const soon = at(watch, surfacedS + 60);

  it('the hours count down from surfacing', () => {
    expect(afterDiveAt(watch, soon)!.flying.hoursLeft).toBeCloseTo(12 - 1 / 60, 9);
    expect(afterDiveAt(watch, at(watch, surfacedS + 13 * 3600))!.flying.hoursLeft).toBe(0);
  });

  it('has nothing to say under water, nor of dives the unit was not on', () => {
    expect(afterDiveAt(watch, at(watch, 600))).toBeNull();
    expect(afterDiveAt(watch, 0)).toBeNull();
  });

  it('takes the model’s time where it is the longer one', () => {
    const deep = watched(
      [down(60, 120), stay(3600), up(6, 360), stay(7200), up(3, 60), stay(7200), up(0, 60), rest(48 * 3600)],
      {
        flyingWait: { requiredStopsH: 18, cabinM: 5500 },
      },
    );
    const after = afterDiveAt(deep, at(deep, 19000))!;
    expect(after.flying.longer).toBe('model');
    expect(after.flying.hoursLeft).toBeCloseTo(after.flying.model.minutes / 60, 12);
    expect(after.flying.hoursLeft).toBeGreaterThan(18);
  });

  it('the model’s wait ends just when the ceiling in the cabin’s pressure is gone', () => {
    const deep = watched([down(40, 120), stay(3600), up(0, 280), rest(3600)], {
      lockOut: { on: false },
      flyingWait: { cabinM: 3000 },
    });
    const sample = at(deep, 4300);
    const { minutes } = afterDiveAt(deep, sample)!.flying.model;
    const ceilingAfter = (wait: number) => {
      const { compartments } = deep.timeline;
      const nitrogenBar = Float64Array.from(restingAt(deep.timeline, sample), (one) => nitrogenAfter(one, wait));
      return ceilingAtGf(
        {
          compartments,
          nitrogenBar,
          heliumBar: new Float64Array(16),
          at: 0,
          surfaceBar: atmosphereBar(3000),
          barPerMetre: 0.1,
        },
        0.85,
      ).depthM;
    };
    expect(minutes).toBeGreaterThan(10);
    expect(ceilingAfter(minutes)).toBeLessThan(1e-6);
    expect(ceilingAfter(minutes - 0.1)).toBeGreaterThan(0);
  });

  it('explains both parts and which is longer', () => {
    const said = explainAltitudeWait(afterDiveAt(watch, soon)!.flying, 'metric');
    expect(said[0]).toMatch(
      /^The model: compartment 6 holds 1\.3\d bar of inert gas and may hold 1\.3\d bar at 2438 m, where the pressure is 0\.75 bar/,
    );
    expect(said[1]).toMatch(/^Breathing air here it gets there in/);
    expect(said).toContain('The guideline: after one dive with no required stop, wait 12 h from surfacing.');
    expect(said.at(-1)).toBe('The longer of the two is the guideline’s: 12 h from now. No wait is a guarantee.');
  });

  it('answers for a drive over a pass, by the model alone where it is low', () => {
    const after = afterDiveAt(watch, soon, { driveToM: 500 })!.drive!;
    expect(after.guideline).toBeNull();
    expect(explainAltitudeWait(after, 'metric')).toContain(
      'The guideline speaks of 610 m and more; below that there is only the model.',
    );
    expect(afterDiveAt(watch, soon, { driveToM: 1500 })!.drive!.guideline).not.toBeNull();
  });

  it('says when a height is never tolerated by someone who lives here', () => {
    const said = explainAltitudeWait(afterDiveAt(watch, soon, { driveToM: 6000 })!.drive!, 'metric');
    expect(said[1]).toMatch(/never gets there/);
    expect(said).toContain('It is about cabins up to 2438 m; this is higher, so it may be too short.');
  });

  it('desaturation is when the slowest compartment is within a hundredth of a bar of rest', () => {
    const { minutes, leader } = afterDiveAt(watch, soon)!.desaturation;
    const resting = restingAt(watch.timeline, soon);
    const excess = (wait: number) => Math.max(...resting.map((one) => nitrogenAfter(one, wait) - one.settledBar));
    expect(excess(minutes)).toBeCloseTo(DESATURATED_BAR, 8);
    const slowest = resting[leader - 1]!;
    // Haldane's solution turned round: t = ln(excess now / excess left) / k.
    expect(minutes).toBeCloseTo(
      Math.log((slowest.nitrogenBar - slowest.settledBar) / DESATURATED_BAR) / slowest.nitrogenK,
      4,
    );
  });

  it('washout is the part of the excess at surfacing that has gone: a half after a half-time', () => {
    // Compartment 4 has a nitrogen half-time of 18.5 min.
    const after = afterDiveAt(watch, at(watch, surfacedS + 18.5 * 60))!;
    expect(after.washout[3]!.gone).toBeCloseTo(0.5, 9);
  });

  it('the no-stop time of a next dive comes back to a fresh diver’s', () => {
    const next = { depthM: 18, gas: AIR };
    const early = afterDiveAt(watch, soon, { next })!.recovery!;
    const late = afterDiveAt(watch, at(watch, surfacedS + 18 * 3600), { next })!.recovery!;
    expect(early.nowMin).toBeLessThan(early.freshMin - 5);
    expect(early.recoveredAfterMin).toBeGreaterThan(60);
    expect(late.nowMin).toBeGreaterThan(late.freshMin - 1);
    expect(late.recoveredAfterMin).toBe(0);
  });
});

describe('a wait', () => {
  it.each([
    [0, 0],
    [0.3, 0.3],
    [1, 1],
    [777.7, 777.7],
  ])('for minute %s is found at %s', (when, expected) => {
    expect(minutesUntil((minutes) => minutes >= when)).toBeCloseTo(expected, 5);
  });

  it('of more than a week is told as never', () => {
    expect(minutesUntil((minutes) => minutes > 7 * 24 * 60)).toBe(Infinity);
  });
});
