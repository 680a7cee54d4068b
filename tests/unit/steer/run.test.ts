import { describe, expect, it } from 'vitest';
import { cleanSteps } from '@/lib/steer/clean-steps';
import { keptRun, nameOfRun, scriptOfRun } from '@/lib/steer/kept-run';
import { cutRun, DEEPEST_STEERED_M, FRESH_RUN, runDepthM, runEndS, steered, type SteerRun } from '@/lib/steer/run';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { diveOf } from '../read';

/** Steers in frames of a screen, at ten times the time. */
function steer(run: SteerRun, rateMMin: number, seconds: number, everyM = 0.1): SteerRun {
  let next = run;
  for (let s = 0; s < seconds; s += 1 / 6) next = steered(next, rateMMin, Math.min(1 / 6, seconds - s), everyM);
  return next;
}

const PLAIN = diveOf('descend to 5 m in 1 min\nascend to surface in 1 min\n');

describe('a dive steered by hand', () => {
  it('is where its speed takes it, and its speed changes at whole seconds', () => {
    const run = steer(FRESH_RUN, 18, 100);
    expect(runEndS(run)).toBe(100);
    expect(runDepthM(run, 100)).toBeCloseTo(30, 6);
    expect(runDepthM(run, 50)).toBeCloseTo(15, 6);
    const on = steered(steered(run, -9, 0.4, 0.1), 18, 0.6, 0.1);
    expect(runDepthM(on, 101)).toBeCloseTo(29.85, 6);
  });

  it('stops level, at a depth that a gauge shows', () => {
    const run = steer(steer(FRESH_RUN, 17, 70), 0, 600);
    expect(runDepthM(run, 670)).toBe(19.8);
    expect(runDepthM(run, 100)).toBe(19.8);
    const inFeet = steer(steer(FRESH_RUN, 17, 70), 0, 600, METRES_PER_FOOT);
    expect(runDepthM(inFeet, 670)).toBeCloseTo(65 * METRES_PER_FOOT, 9);
  });

  it('never leaves the water upward, nor goes deeper than may be steered', () => {
    const run = steer(steer(FRESH_RUN, 20, 10), -40, 60);
    expect(Math.min(...run.depthsM)).toBe(0);
    expect(runDepthM(steer(FRESH_RUN, 40, 600), 600)).toBe(DEEPEST_STEERED_M);
  });

  it('goes on from any moment of it, as if what came after had not been', () => {
    const run = steer(steer(steer(FRESH_RUN, 18, 60), 0, 300), -9, 60);
    const cut = cutRun(run, 200.7);
    expect(runEndS(cut)).toBe(200);
    expect(runDepthM(cut, 200)).toBe(18);
    expect(runDepthM(steer(cut, 18, 30), 230)).toBeCloseTo(27, 6);
    expect(cutRun(run, 0.4)).toEqual(FRESH_RUN);
    expect(cutRun(run, 1e6)).toEqual(run);
  });
});

describe('the steps of a dive steered by hand', () => {
  it('are those a person would write', () => {
    const run = steer(steer(steer(FRESH_RUN, 40, 30), 0, 600), -40, 15);
    expect(cleanSteps(run, 0.3, 0.1)).toEqual([
      { kind: 'descend', toM: 20, durationS: 30 },
      { kind: 'stay', durationS: 600 },
      { kind: 'ascend', toM: 10, durationS: 15 },
    ]);
  });

  it('keep half an hour level as a stay, however the hand corrected it on the way', () => {
    let run = steer(steer(FRESH_RUN, 18, 67), 0, 60);
    for (let minute = 0; minute < 31; minute += 1) run = steer(steer(run, minute % 2 === 0 ? 3 : -3, 2), 0, 58);
    const steps = cleanSteps(run, 0.3, 0.1);
    expect(steps).toHaveLength(2);
    expect(steps[0]).toMatchObject({ kind: 'descend', durationS: 67 });
    expect(steps[1]).toEqual({ kind: 'stay', durationS: 32 * 60 });
  });

  it('keep two stays a metre apart as two', () => {
    const run = steer(steer(steer(steer(FRESH_RUN, 18, 60), 0, 300), -6, 10), 0, 300);
    expect(cleanSteps(run, 0.3, 0.1).map(({ kind }) => kind)).toEqual(['descend', 'stay', 'ascend', 'stay']);
  });
});

describe('a run that is kept', () => {
  it('has a name of its own and the settings it was steered under, and says how near its steps are', () => {
    const base = diveOf(
      '# a lake\naltitude: 500 m\n# cold\ngas: 32%  # rich\ndescend to 5 m in 1 min\nascend to surface in 1 min\n',
    );
    const run = steer(steer(steer(FRESH_RUN, 18, 60), 0, 300), -9, 120);
    const kept = keptRun(base.settings, run, 'metric')!;
    expect(kept).toMatchObject({ deepestM: 18, runS: 480, wayUp: [] });
    expect(kept.depthOffM).toBeLessThan(0.05);
    expect(nameOfRun(kept, (depthM) => `${depthM} m`)).toBe('Steered to 18 m, 8 min');
    const script = scriptOfRun(base, kept, ' A wall #2\nby hand ', 'metric');
    expect(script).toBe(
      [
        '# A wall 2 by hand',
        'altitude: 500 m',
        'gas: 32%  # rich',
        '',
        '# steered by hand',
        'descend to 18 m at 18 m/min',
        'stay 5 min',
        'ascend to surface at 9 m/min',
        '',
      ].join('\n'),
    );
    expect(diveOf(script).settings.altitudeM).toBe(500);
  });

  it('is written in feet where feet are read', () => {
    const ft = METRES_PER_FOOT;
    const run = steer(steer(steer(FRESH_RUN, 60 * ft, 60, ft), 0, 300, ft), -30 * ft, 120, ft);
    const script = scriptOfRun(PLAIN, keptRun(PLAIN.settings, run, 'imperial')!, 'Feet', 'imperial');
    expect(script).toContain('descend to 60 ft at 60 ft/min\nstay 5 min\nascend to surface at 30 ft/min\n');
  });

  it('finds its way up with the stops the model asks for, where it ends under water', () => {
    const run = steer(steer(FRESH_RUN, 18, 120), 0, 25 * 60);
    const kept = keptRun(PLAIN.settings, run, 'metric')!;
    expect(kept.wayUp.some(({ kind }) => kind === 'stay')).toBe(true);
    const script = scriptOfRun(PLAIN, kept, 'Left', 'metric');
    expect(script).toContain('# the way up was added');
    expect(diveOf(script).steps.at(-1)).toMatchObject({ kind: 'ascend', toM: 0 });
  });

  it('leaves out the time before the first descent and after the last arrival; where nobody dived there is none', () => {
    const run = steer(steer(steer(steer(FRESH_RUN, 0, 30), 18, 60), -18, 60), 0, 90);
    expect(keptRun(PLAIN.settings, run, 'metric')!.steps).toEqual([
      { kind: 'descend', toM: 18, durationS: 60 },
      { kind: 'ascend', toM: 0, durationS: 60 },
    ]);
    expect(keptRun(PLAIN.settings, steer(FRESH_RUN, 0, 30), 'metric')).toBeUndefined();
    expect(keptRun(PLAIN.settings, FRESH_RUN, 'metric')).toBeUndefined();
  });
});
