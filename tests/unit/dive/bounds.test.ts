import { describe, expect, it } from 'vitest';
import { parseScript } from '@/lib/dive/script';

const SURFACE = 'ascend to surface at 9 m/min';
const numbered = (count: number, line: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => line(index)).join('\n');
const setups = (count: number) => numbered(count, (index) => `setup: Unit ${index}`);
const cylinders = (count: number) => numbered(count, (index) => `cylinder: no ${index}, 12 L, 200 bar, air`);

/** What a script may go as far as, and what is just too far. */
describe('how far a script may go', () => {
  it.each([
    [`descend to 350 m at 60 m/min\n${SURFACE}`, `descend to 350.1 m at 60 m/min\n${SURFACE}`],
    [`descend to 30 m at 200 m/min\n${SURFACE}`, `descend to 30 m at 200.1 m/min\n${SURFACE}`],
    ['interval 7 days', 'interval 7 days 1 min'],
    ['stay 0.001 s', 'stay 0.0009 s'],
    ['altitude: 6000 m', 'altitude: 6001 m'],
    ['altitude: -450 m', 'altitude: -451 m'],
    ['stop step: 1 m', 'stop step: 0.9 m'],
    ['stop step: 10 m', 'stop step: 10.1 m'],
    ['plan ascent: 60 m/min', 'plan ascent: 60.1 m/min'],
    ['stop rounding: 5 min', 'stop rounding: 5 min 1 s'],
    ['stop rounding: 1 s', 'stop rounding: 0 s'],
    ['carry: 50% from 350 m', 'carry: 50% from 350.1 m'],
    ['setup: Unit, depth +10 m', 'setup: Unit, depth +10.05 m'],
    ['setup: Unit, depth −10 m', 'setup: Unit, depth −10.05 m'],
    ['setup: Unit, depth 120%', 'setup: Unit, depth 120.5%'],
    ['setup: Unit, depth 80%', 'setup: Unit, depth 79.5%'],
    [`setup: ${'U'.repeat(60)}`, `setup: ${'U'.repeat(61)}`],
    [setups(12), setups(13)],
    ['setup: Unit, fresh before dive 51', 'setup: Unit, fresh before dive 52'],
    ['cylinder: back, 0.1 L, 200 bar, air', 'cylinder: back, 0.09 L, 200 bar, air'],
    ['cylinder: back, 100 L, 200 bar, air', 'cylinder: back, 100.5 L, 200 bar, air'],
    ['cylinder: back, 12 L, 1 bar, air', 'cylinder: back, 12 L, 0.9 bar, air'],
    ['cylinder: back, 12 L, 450 bar, air', 'cylinder: back, 12 L, 451 bar, air'],
    [`cylinder: ${'c'.repeat(30)}, 12 L, 200 bar, air`, `cylinder: ${'c'.repeat(31)}, 12 L, 200 bar, air`],
    [cylinders(12), cylinders(13)],
    ['consumption: 0.1 L/min', 'consumption: 0.09 L/min'],
    ['consumption: 200 L/min', 'consumption: 201 L/min'],
    ['stress factor: 1', 'stress factor: 0.99'],
    ['stress factor: 5', 'stress factor: 5.01'],
    ['\n'.repeat(4999), '\n'.repeat(5000)],
    ['#'.repeat(2000), `${'#\n'.repeat(4000)}${'#'.repeat(200_001)}`],
  ])('is as far as the first, and no further, to the second: %.60j', (far, tooFar) => {
    const read = parseScript(far);
    expect(read.ok ? [] : read.errors).toEqual([]);
    expect(parseScript(tooFar).ok).toBe(false);
  });

  it('goes down at 18 m/min where neither a step nor the plan gives a rate', () => {
    const read = parseScript(`descend to 18 m\n${SURFACE}`);
    expect(read.ok && read.dive.steps[0]).toEqual({ kind: 'descend', toM: 18, durationS: 60 });
  });
});
