import { sampleAt } from '@/lib/dive/timeline';
import { describe, expect, it } from 'vitest';
import { OXYGEN } from '@/lib/physics/gas';
import { workingFor } from '@/lib/working/all';
import { unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import type { Working } from '@/lib/working/working';
import { at, down, rest, stay, up, watched, type RulesInput } from '../../rules/made-dives';
import type { Step } from '@/lib/dive/dive';
import { SETTINGS, downFor, workedDive } from '../dives';

function asked(reading: UnitReadingId, steps: readonly Step[], timeS: number, rules: RulesInput = {}): Working {
  const watch = watched(steps, rules);
  return unitWorkingFor(reading, { watch, sample: at(watch, timeS) })!;
}

const step = (working: Working, id: string) => working.steps.find((one) => one.id === `step:${id}`)!;

describe('the working behind a safety stop', () => {
  // Down to 18 m, up at 9 m/min to 5 m, out of the band to 8 m and back again. Every second of it counted by hand.
  const drifting = [down(18, 60), stay(240), up(5, 87), stay(60), down(8, 20), stay(30), up(5, 20), stay(60)];

  it('counts the seconds in the band and none outside', () => {
    const working = asked('safety-stop', drifting, 60 + 240 + 87 + 60 + 20 + 30 + 20 + 60);
    // In the band from 6.1 m: reached 79.67 s into the rise, so counted from 80 s on, 7 + 60 s there; down through 6.1 m
    // after 7.3 s, of which whole seconds 7; back within 6.1 m after 12.7 s of 20, so from 13 s on, 7 + 60 s.
    expect(working.answer).toMatchObject({ value: 180 - (7 + 60 + 7) - (7 + 60), unit: 's' });
    expect(working.table!.rows.map((row) => row[2]).filter((word) => word === 'runs down')).toHaveLength(2);
    expect(working.table!.rows.some((row) => row[2] === 'stands still')).toBe(true);
  });

  it('tells what a fast rise has added, breach by breach', () => {
    const fast = [down(30, 90), stay(120), up(12, 36), stay(60), up(5, 47), stay(60)];
    const working = asked('safety-stop', fast, 90 + 120 + 36 + 60 + 47 + 60);
    expect(step(working, 'added-1').result).toEqual({ value: 60, unit: 's' });
    expect(step(working, 'whole').result.value).toBe(240);
  });

  it('is not shown where none is due', () => {
    const watch = watched(downFor(8, 10));
    expect(unitWorkingFor('safety-stop', { watch, sample: at(watch, 100) })).toBeNull();
  });
});

describe('the working behind a rate', () => {
  it('takes the depth some seconds before and makes it a minute’s', () => {
    const working = asked('rate', [down(30, 90), stay(60), up(15, 60), stay(10)], 180);
    // 15 m in 60 s: 1.25 m in the 5 s of the average.
    const { d_then: then, d_now: now } = step(working, 'speed').values;
    expect(then!.value - now!.value).toBeCloseTo(1.25, 9);
    expect(working.answer.value).toBeCloseTo(15, 9);
  });
});

describe('the working behind an imposed stop', () => {
  it('adds what each fast rise asks for and takes off what has been made', () => {
    const rules = { imposedStop: { on: true } };
    const working = asked('imposed-stop', [down(30, 90), stay(120), up(6, 60), stay(45)], 315, rules);
    expect(step(working, 'asked-1').result.value).toBe(120);
    // It counts within 1.5 m of 6 m: the rise at 24 m/min is there for its last 3.75 s, whole seconds 3.
    expect(working.answer.value).toBe(120 - 45 - 3);
  });
});

describe('the working behind limits drawn in', () => {
  it('takes a tenth off the high gradient factor', () => {
    const working = asked('tightened-limits', [down(30, 90), stay(120), up(6, 60), stay(45)], 300, {
      tighterLimits: { on: true },
    });
    const { gf_high: high } = step(working, 'tightened').values;
    expect(working.answer.value).toBeCloseTo(high!.value - 0.1, 9);
  });
});

// Flying After Recreational Diving Workshop, 2002: 12 h after one dive, 18 h after several, longer after required stops.
describe('the working behind the wait before flying', () => {
  const short = [down(12, 60), stay(600), up(0, 80)];

  it('is the published 12 h after one dive, where the model needs less', () => {
    const working = asked('no-fly', [...short, rest(3600)], 740);
    expect(working.answer).toMatchObject({ value: 12, unit: 'h' });
    expect(working.compartment).toBeUndefined();
    expect(step(working, 'guideline').values['h_guide']).toMatchObject({
      value: 12,
      from: 'published',
      obtained: 'read',
    });
    expect(step(working, 'model-wait').result.value).toBeLessThan(12);
  });

  it('counts the guideline from surfacing', () => {
    expect(asked('no-fly', [...short, rest(7200)], 740 + 3600).answer.value).toBeCloseTo(11, 9);
  });

  it('is 18 h after two dives', () => {
    expect(asked('no-fly', [...short, rest(3600), ...short, rest(3600)], 740 + 3600 + 740).answer.value).toBeCloseTo(
      18,
      9,
    );
  });
});

describe('the working behind desaturation', () => {
  it('is Haldane’s solution for the last compartment down to the edge', () => {
    const working = asked('desaturation', [down(20, 60), stay(1800), up(0, 134), rest(3600)], 1994);
    const { P_N2: tension, P_rest: settled, k_N2: k } = step(working, 'first').values;
    const minutes = working.answer.value * 60;
    expect((tension!.value - settled!.value) * Math.exp(-k!.value * minutes)).toBeCloseTo(0.01, 9);
  });
});

describe('the workings behind oxygen and density', () => {
  // NOAA: 45 min is the whole single limit at 1.6 atm, 150 min the day's; a unit of dose is a minute at 1 atm.
  const deepM = (1.6 * 1.01325 - 1.01325) * 10;
  const atLimit = workedDive(
    [
      { kind: 'descend', toM: deepM, durationS: 0.001 },
      { kind: 'stay', durationS: 2700 },
    ],
    { gas: OXYGEN },
  );
  const last = atLimit.timeline.length - 1;

  it('uses the whole single limit in 45 min at 1.6 atm, and 45 of 150 min of the day’s', () => {
    expect(workingFor('oxygen-single', atLimit.timeline, atLimit.figures, last).answer.value).toBeCloseTo(1, 5);
    expect(workingFor('oxygen-daily', atLimit.timeline, atLimit.figures, last).answer.value).toBeCloseTo(45 / 150, 5);
  });

  it('takes 1.92 units a minute there, as printed', () => {
    expect(workingFor('oxygen-pulmonary', atLimit.timeline, atLimit.figures, last).answer.value / 45).toBeCloseTo(
      1.92,
      2,
    );
  });

  it('halves the single exposure in each 90 min at the surface', () => {
    const { timeline, figures } = workedDive(
      [
        { kind: 'descend', toM: deepM, durationS: 0.001 },
        { kind: 'stay', durationS: 1350 },
        { kind: 'ascend', toM: 0, durationS: 0.001 },
        { kind: 'interval', durationS: 5400 },
      ],
      { gas: OXYGEN },
    );
    expect(workingFor('oxygen-single', timeline, figures, timeline.length - 1).answer.value).toBeCloseTo(0.25, 4);
  });

  it('gives air at 31 m the 5.2 g/L that Anthony and Mitchell recommend as the most', () => {
    const { timeline, figures } = workedDive(downFor(31, 5));
    expect(workingFor('gas-density', timeline, figures, timeline.length - 1).answer.value).toBeCloseTo(5.2, 0);
  });
});

describe('the working behind the no-stop time with credit', () => {
  it('is no shorter than without, and ends where the direct ascent just fails', () => {
    const { timeline, figures } = workedDive(downFor(30, 5));
    const credited = workingFor('credited-no-stop', timeline, figures, 20);
    expect(credited.answer.value).toBeGreaterThan(workingFor('no-stop', timeline, figures, 20).answer.value);
    expect(step(credited, 'over').result.value).toBeCloseTo(0, 5);
  });

  it.each([
    [9, 1.67, 'It is the shorter of the two'],
    [3, 0, 'None is left'],
  ])('at 60 m on a way up at %d m/min is the shorter, and says why', (ascentMMin, expectedMin, words) => {
    // Worked outside this project: 60 m, air, 85/85, down in 3 min.
    const plan = { ...SETTINGS.plan, ascentMMin };
    const { timeline, figures } = workedDive(downFor(60, 1), { plan });
    const arrival = sampleAt(timeline, 180);
    const { answer } = workingFor('credited-no-stop', timeline, figures, arrival);
    expect(workingFor('no-stop', timeline, figures, arrival).answer.value).toBeCloseTo(2.35, 2);
    expect(answer.value).toBeCloseTo(expectedMin, 2);
    expect(answer.text).toContain(`${words}: on the way up from here`);
  });
});
