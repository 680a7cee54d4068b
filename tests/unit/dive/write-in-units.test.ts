import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scenarios } from '@/content/scenarios/scenarios';
import { parseScript } from '@/lib/dive/script';
import { writeInUnits } from '@/lib/dive/write-in-units';

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
  const parsed = parseScript(script);
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  return parsed.dive.steps;
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

  it('is left alone where it is in feet already, or makes no sense', () => {
    const feet = 'descend to 100 ft at 60 ft/min\nsurface at 30 ft/min';
    expect(writeInUnits(feet, 'imperial')).toBe(feet);
    expect(writeInUnits('descent to 30 m', 'imperial')).toBe('descent to 30 m');
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
