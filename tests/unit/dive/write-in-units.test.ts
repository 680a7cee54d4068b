import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scenarios } from '@/content/scenarios/scenarios';
import { stepLines } from '@/lib/dive/script/plain-script';
import { writeInUnits, writeStepsInFeet } from '@/lib/dive/edit/write-in-units';
import { diveOf } from '../read';

const METRIC = `# a wall of 30 m
water: salt
altitude: 1500 m
plan ascent: 10 m/min
gas: air
carry: 50% from 21 m
cylinder: back, 12 L, 232 bar, air
setup: Other, depth +0.6 m

descend to 30 m at 18 m/min
stay 20 min   # at 30 m
ascend to 5 m in 3 min
stay 3 min
surface at 9 m/min
`;

const stepsOf = (script: string) => {
  return diveOf(script).steps;
};

describe('a script written in feet', () => {
  it('keeps its remarks, times, gases and cylinders', () => {
    expect(writeInUnits('descend to 30 m at 18 m/min # 30 m\nstay 5 min\nsurface at 9 m/min', 'imperial')).toBe(
      'descend to 98.4 ft at 59 ft/min # 30 m\nstay 5 min\nsurface at 29.5 ft/min',
    );
  });

  it('comes back in the round metres it had', () => {
    const feet = writeInUnits(METRIC, 'imperial');
    expect(feet).toMatch(/^altitude: 4921 ft$/m);
    expect(feet).not.toMatch(/^[^#]*\d m\b/m);
    expect(writeInUnits(feet, 'metric')).toBe(METRIC);
    expect(writeInUnits('descend to 100 ft at 60 ft/min\nsurface at 30 ft/min', 'metric')).toBe(
      'descend to 30.5 m at 18.3 m/min\nsurface at 9.14 m/min',
    );
  });

  it('is the same dive but for rounding', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 900 }), fc.integer({ min: 3, max: 40 }), (tenths, rate) => {
        const script = `descend to ${tenths / 10} m at ${rate} m/min\nstay 5 min\nascend to surface at ${rate} m/min`;
        const [before, after] = [stepsOf(script), stepsOf(writeInUnits(script, 'imperial'))];
        before.forEach((step, i) => {
          const other = after[i]!;
          if ('toM' in step && 'toM' in other) expect(Math.abs(step.toM - other.toM)).toBeLessThanOrEqual(0.0201);
        });
      }),
    );
  });

  it('has heights in whole feet within half a metre, depths within 2 cm, and signs as they were', () => {
    const line = (text: string) => writeInUnits(text, 'imperial');
    expect(line('arrived from: 1000 m, 2 h ago')).toBe('arrived from: 3281 ft, 2 h ago');
    expect(line('adapted to: 0 m')).toBe('adapted to: 0 ft');
    expect(line('setup: Other, depth +0.5 m, altitude 300 m')).toBe('setup: Other, depth +1.6 ft, altitude 984.3 ft');
    expect(line('setup: Other, depth -0.5 m')).toBe('setup: Other, depth -1.6 ft');
    expect(line('stop step: 3 m')).toBe('stop step: 3 m');
  });

  it('is left alone where it is in feet already, or makes no sense', () => {
    const feet = 'descend to 100 ft at 60 ft/min\nsurface at 30 ft/min';
    expect(writeInUnits(feet, 'imperial')).toBe(feet);
    expect(writeInUnits('descent to 30 m', 'imperial')).toBe('descent to 30 m');
  });
});

describe('the steps of a script in feet', () => {
  it('are whole feet, and multiples of five feet a minute where that is near; settings stay as they are', () => {
    const steps = 'descend to 18 m at 18 m/min # 18 m\nstay 20 min\nascend to 5 m at 10 m/min\nascend to 3 m in 1 min';
    expect(writeStepsInFeet(`altitude: 300 m\n${steps}\nsurface at 9 m/min`)).toBe(
      'altitude: 300 m\ndescend to 59 ft at 60 ft/min # 18 m\nstay 20 min\nascend to 16 ft at 33 ft/min\nascend to 10 ft in 1 min\nsurface at 30 ft/min',
    );
  });

  it('of a dive are told so too, with a time where no whole rate is exact', () => {
    const steps = stepsOf(
      'descend to 100 ft at 60 ft/min\nstay 5 min\nascend to 20 ft in 100 s\nsurface at 30 ft/min\ninterval 1 h\ndescend to 10 ft at 30 ft/min\nsurface at 10 ft/min',
    );
    expect(stepLines(steps, 'imperial')).toEqual([
      'descend to 100 ft at 60 ft/min',
      'stay 5 min',
      'ascend to 20 ft at 48 ft/min',
      'ascend to surface at 30 ft/min',
      'interval 60 min',
      'descend to 10 ft at 30 ft/min',
      'ascend to surface at 10 ft/min',
    ]);
    expect(stepLines(stepsOf('descend to 30 m in 101 s\nsurface at 9 m/min'))).toEqual([
      'descend to 30 m in 1 min 41 s',
      'ascend to surface at 9 m/min',
    ]);
  });
});

describe('ready dives in feet', () => {
  it.each(scenarios.map((scenario) => [scenario.id, scenario] as const))(
    '%s is one of its own, in round figures',
    (_, scenario) => {
      const { inFeet } = scenario;
      const body = inFeet.script;
      expect(body).not.toMatch(/\d\s*m\b|m\/min/);
      expect(`${inFeet.title} ${inFeet.shows}`).not.toMatch(/\d\s*m\b|m\/min|metres/);
      for (const [, depth] of body.matchAll(/to (\S+) ft/g)) expect(Number(depth) % 5).toBe(0);
      for (const [, rate] of body.matchAll(/at (\S+) ft\/min/g)) expect(Number(rate) % 5).toBe(0);
      const kinds = (script: string) => stepsOf(script).map(({ kind }) => kind);
      expect(kinds(body)).toEqual(kinds(scenario.script));
    },
  );
});
