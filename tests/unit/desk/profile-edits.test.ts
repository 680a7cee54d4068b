import { describe, expect, it } from 'vitest';
import { addPoint, newPointS, pullLegEnd } from '@/app/stage/figures/profile-edits';
import { legsOf } from '@/lib/dive/legs';
import { diveOf } from '../read';

const SCRIPT = 'descend to 20 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';

function read(script: string) {
  const dive = diveOf(script);
  return { ...dive, ...legsOf(dive) };
}

const { legs } = read(SCRIPT);
const [down, stay, up] = legs as [(typeof legs)[0], (typeof legs)[0], (typeof legs)[0]];

describe('a point put on a leg', () => {
  it.each([
    ['a descent', down, 40, 12],
    ['a stay', stay, 600, 20],
    ['an ascent', up, up.startS + 60, 11],
  ])('lies on the line of %s, at that time', (_, leg, timeS, depthM) => {
    const made = read(addPoint(SCRIPT, leg, timeS));
    expect(made.legs).toHaveLength(4);
    const point = made.legs[leg.step]!;
    expect(Math.abs(point.endS - timeS)).toBeLessThan(0.5);
    expect(point.toM).toBeCloseTo(depthM, 9);
    expect(made.endS).toBeCloseTo(legs.at(-1)!.endS, 6);
  });

  it('is at the time cursor by the key, and half way where the cursor is elsewhere', () => {
    expect(newPointS(stay, 600)).toBe(600);
    expect(newPointS(stay, 0)).toBe((stay.startS + stay.endS) / 2);
  });
});

describe('the end of a stay pulled to another depth', () => {
  it.each([
    [12, 'ascend to 12 m in 20 min'],
    [25.04, 'descend to 25 m in 20 min'],
  ])('at %f m makes a way there of it, in the same time', (depthM, line) => {
    const script = pullLegEnd(SCRIPT, stay, depthM);
    expect(script.split('\n')[1]).toBe(line);
    const made = read(script);
    expect(made.legs[1]).toMatchObject({ startS: stay.startS, endS: stay.endS, fromM: 20 });
    expect(made.legs[2]!.fromM).toBeCloseTo(depthM, 1);
  });

  it('stays a stay where it is put back, and stops short of a way up with nothing left to rise', () => {
    expect(pullLegEnd(SCRIPT, stay, 20)).toBe(SCRIPT);
    expect(pullLegEnd(SCRIPT, stay, -3)).toContain('ascend to 0.1 m in 20 min');
  });
});
