import { describe, expect, it } from 'vitest';
import {
  FRESH_RUN,
  FULL_LEVER_M_MIN,
  leverRateMMin,
  scriptOfRun,
  steered,
  stepsOfRun,
  type SteerRun,
} from '@/app/desk/steer/steer-run';
import { parseScript } from '@/lib/dive/script';

function steer(run: SteerRun, lever: number, seconds: number): SteerRun {
  let next = run;
  for (let s = 0; s < seconds; s += 1) next = steered(next, lever, 1);
  return next;
}

describe('a dive steered by hand', () => {
  it('goes as fast as the lever is pulled, up and down alike', () => {
    expect(leverRateMMin(0)).toBe(0);
    expect(leverRateMMin(1)).toBe(FULL_LEVER_M_MIN);
    expect(leverRateMMin(-1)).toBe(-FULL_LEVER_M_MIN);
    expect(leverRateMMin(-0.5)).toBe(-leverRateMMin(0.5));
    expect(leverRateMMin(0.5)).toBeLessThan(FULL_LEVER_M_MIN / 2);
  });

  it('becomes as few steps as keep its depths', () => {
    const down = steer(FRESH_RUN, 1, 30);
    const there = steer(down, 0, 600);
    const up = steer(there, -1, 15);
    expect(stepsOfRun(up)).toEqual([
      { kind: 'descend', toM: 20, durationS: 30 },
      { kind: 'stay', durationS: 600 },
      { kind: 'ascend', toM: 10, durationS: 15 },
    ]);
  });

  it('never leaves the water upward', () => {
    const run = steer(steer(FRESH_RUN, 0.5, 10), -1, 60);
    expect(Math.min(...run.depthsM)).toBe(0);
  });

  it('ends as a script that reads, keeps the header and finds its way to the surface', () => {
    const parsed = parseScript(
      '# a lake\naltitude: 500 m\ngas: 32%\ndescend to 5 m in 1 min\nascend to surface in 1 min\n',
    );
    if (!parsed.ok) throw new Error('the header does not parse');
    const script = scriptOfRun(parsed.dive, steer(steer(FRESH_RUN, 1, 30), 0, 120));
    const again = parseScript(script);
    expect(script).toContain('# a lake');
    expect(again.ok && again.dive.settings.altitudeM).toBe(500);
    expect(again.ok && again.dive.steps.at(-1)).toMatchObject({ kind: 'ascend', toM: 0 });
  });
});
