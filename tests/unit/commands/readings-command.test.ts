// @module-tag in-turn
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';

const EXAMPLE = `# comments are kept
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air
descend to 30 m at 18 m/min
stay 20 min
switch to 50%
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
interval 60 min
`;

function readings(input: string, ...options: string[]) {
  return spawnSync(process.execPath, ['--import', 'tsx', 'app/commands/readings.ts', '-', ...options], {
    input,
    encoding: 'utf8',
  });
}

describe('the readings command', () => {
  it('tells a script on standard input as JSON, with the caution, each change of step and what a unit shows', () => {
    const { status, stdout, stderr } = readings(EXAMPLE);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const told = JSON.parse(stdout);
    expect(told.caution).toBe(cautions.general);
    expect(told.warnings).toHaveLength(1);
    const times = told.samples.map((sample: { timeS: number }) => sample.timeS);
    for (const change of [0, 100, 1300, 1466.6666666666667, 1646.6666666666667, 1680, 5280]) {
      expect(times.some((timeS: number) => Math.abs(timeS - change) < 1e-6)).toBe(true);
    }
    const atSwitch = told.samples.find((sample: { timeS: number }) => sample.timeS === 1300);
    expect(atSwitch).toMatchObject({
      depthM: 30,
      ambientBar: 4.01325,
      gas: { o2: 0.5, he: 0 },
      noStopMin: 0,
      requiredStops: [{ depthM: 3, minutes: 2 }],
    });
    expect(atSwitch.nitrogenBar).toHaveLength(16);
    expect(atSwitch.heliumBar).toHaveLength(16);
    expect(atSwitch.leadingCompartment).toBeGreaterThanOrEqual(1);
    expect(atSwitch.shown.mode).toBe('dive');
    expect(told.samples[0].noStopMin).toBeNull();
    expect(told.events[0]).toMatchObject({ kind: 'safety-stop-due', rule: 'safetyStop' });
  });

  it.each(['csv', 'text'])('puts the caution first in %s', (format) => {
    const { status, stdout } = readings(EXAMPLE, '--format', format, '--every', '300');
    expect(status).toBe(0);
    expect(stdout.split('\n')[0]).toContain(cautions.general);
  });

  it('ends with code 2 and one line that says where and what, and nothing on standard output, for bad input', () => {
    expect(readings('gas: air\ndescend to 30 m at 18 m/min\nascend to 40 m at 9 m/min\n')).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringMatching(/^-:3:\d+: [^\n]+\n$/),
    });
    expect(readings(EXAMPLE, '--every', 'never')).toMatchObject({ status: 2, stdout: '' });
  });

  it('refuses a script without a step, and samples finer than there is room for, as it does any bad input', () => {
    for (const { status, stdout, stderr } of [readings('gas: air\n'), readings(EXAMPLE, '--every', '1e-9')]) {
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr.trim().split('\n')).toHaveLength(1);
    }
  });

  it('tells what would have avoided a stop, each change as a whole dive that it finds free of it', () => {
    const told = JSON.parse(readings(EXAMPLE, '--avoid', 'stop').stdout);
    const earlier = told.waysOut.find(({ lever }: { lever: string }) => lever === 'leave-earlier');
    expect(earlier).toMatchObject({ from: 20, unit: 'min', cost: expect.stringContaining('less at the bottom') });
    expect(earlier.script).toBe(EXAMPLE.replace('stay 20 min', `stay ${earlier.to} min`));
    const free = JSON.parse(readings(earlier.script, '--avoid', 'stop').stdout);
    expect(free.waysOut).toEqual([]);
    expect(free.howMuchMore[0]).toMatchObject({ lever: 'stay-longer', from: earlier.to, to: earlier.to + 1 });
    const none = told.waysOut.find(({ lever }: { lever: string }) => lever === 'longer-interval');
    expect(none).toEqual({ lever: 'longer-interval', dive: 1, none: true, text: expect.any(String) });
    const text = readings(EXAMPLE, '--avoid', 'stop', '--format', 'text').stdout;
    expect(text).toContain(`# leave-earlier: ${earlier.text} Its cost: ${earlier.cost}.`);
    expect(text).toContain(`#   stay ${earlier.to} min`);
    expect(readings(EXAMPLE, '--avoid', 'trouble').status).toBe(2);
  });
});
