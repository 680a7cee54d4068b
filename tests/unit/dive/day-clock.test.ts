import { describe, expect, it } from 'vitest';
import { legsOf } from '@/lib/dive/legs';
import { atDayClock, printDayClock, printDaySpan, sayAtDayClock, shownFromS } from '@/lib/dive/day-clock';
import { diveOf } from '../read';

function day(script: string) {
  return legsOf(diveOf(script));
}

const DIVE = 'descend to 20 m at 20 m/min\nstay 20 min\nascend to surface at 10 m/min\n';

describe('the clock of a day', () => {
  it('runs on from the start where there is one dive', () => {
    expect(printDayClock(day(DIVE), 17 * 60 + 40)).toBe('17:40');
    expect(sayAtDayClock(day(DIVE), 17 * 60 + 40)).toBe('At 17:40');
    expect(atDayClock(day(DIVE), 17 * 60 + 40)).toBe('at 17:40');
    expect(printDaySpan(day(DIVE), 60, 21 * 60)).toBe('1:00 to 21:00');
  });

  it('tells what happens by the first second that shows it, and by the end of its leg', () => {
    const slow = day('descend to 20 m at 18 m/min\nstay 20 min\nascend to surface at 10 m/min\n');
    const downS = (20 / 18) * 60;
    expect(shownFromS(slow, 0)).toBeCloseTo(0, 9);
    expect(shownFromS(slow, 788.4)).toBe(789);
    expect(shownFromS(slow, 789)).toBe(789);
    // The way down ends between two whole seconds, and readings change there too.
    expect(shownFromS(slow, 66.2)).toBeCloseTo(downS, 9);
    expect(shownFromS(slow, downS)).toBeCloseTo(downS, 9);
    expect(shownFromS(slow, downS + 0.1)).toBe(67);
  });

  it('begins anew with each dive, and with each wait', () => {
    const two = day(`${DIVE}interval 48 h\n${DIVE}`);
    const firstS = 23 * 60;
    expect(printDayClock(two, 60)).toBe('Dive 1, 1:00');
    expect(printDayClock(two, firstS + 45 * 60 + 59)).toBe('After dive 1, 45 min');
    expect(printDayClock(two, firstS + 47.5 * 3600)).toBe('After dive 1, 47 h 30 min');
    expect(printDayClock(two, firstS + 48 * 3600 + 34)).toBe('Dive 2, 0:34');
    expect(sayAtDayClock(two, firstS + 48 * 3600 + 34)).toBe('Dive 2, at 0:34');
    expect(atDayClock(two, firstS + 48 * 3600 + 34)).toBe('on dive 2, at 0:34');
    expect(atDayClock(two, firstS + 47.5 * 3600)).toBe('after dive 1, at 47 h 30 min');
    // A stretch ends by the clock it began on, where the next one begins anew.
    expect(printDaySpan(two, 60, 21 * 60)).toBe('Dive 1, 1:00 to 21:00');
    expect(printDaySpan(two, firstS, firstS + 48 * 3600)).toBe('After dive 1, 0 min to 48 h');
    expect(printDaySpan(two, firstS + 48 * 3600, firstS + 48 * 3600 + 60)).toBe('Dive 2, 0:00 to 1:00');
  });
});
