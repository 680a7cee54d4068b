import { describe, expect, it } from 'vitest';
import { pullStayEnd } from '@/lib/dive/edit/edit-steps';
import { changed, TEXT } from './edited';

describe('pulling the end of a stay to another depth', () => {
  it('makes it a change of depth in the same time, and what follows goes on from there', () => {
    expect(changed(pullStayEnd(TEXT, 1, 24.04))).toEqual(['ascend to 24 m in 20 min']);
    expect(changed(pullStayEnd(TEXT, 1, 33))).toEqual(['descend to 33 m in 20 min']);
    expect(changed(pullStayEnd(TEXT, 3, 0.3))).toEqual(['ascend to 0.3 m in 3 min']);
    expect(changed(pullStayEnd(TEXT, 1, 4))).toEqual([
      'ascend to 4 m in 20 min',
      'descend to 5 m at 9 m/min  # slowly',
    ]);
  });

  it('keeps the remark, the capital and the feet of the script', () => {
    const feet = 'Descend to 100 ft at 60 ft/min\nStay 5 min # here\nSurface at 30 ft/min';
    expect(changed(pullStayEnd(feet, 1, 24.4), feet)).toEqual(['Ascend to 80 ft in 5 min # here']);
    expect(pullStayEnd(feet, 1, 30.48 + 0.14)).toBe(feet);
    expect(changed(pullStayEnd(feet, 1, 30.48 + 0.16), feet)).toEqual(['Descend to 101 ft in 5 min # here']);
  });

  it('stops a step short of where the next change of depth ends', () => {
    expect(changed(pullStayEnd(TEXT, 1, 5))).toEqual(['ascend to 5.1 m in 20 min']);
    expect(changed(pullStayEnd(TEXT, 3, 0))).toEqual(['ascend to 0.1 m in 3 min']);
    expect(changed(pullStayEnd(TEXT, 1, 900))).toEqual(['descend to 350 m in 20 min']);
  });

  it('leaves it where it is pulled less than half a step, and other steps, and the last stay of a dive', () => {
    expect(pullStayEnd(TEXT, 1, 30.04)).toBe(TEXT);
    expect(pullStayEnd(TEXT, 1, 29.96)).toBe(TEXT);
    expect(changed(pullStayEnd(TEXT, 1, 30.06))).toEqual(['descend to 30.1 m in 20 min']);
    expect(pullStayEnd(TEXT, 0, 20)).toBe(TEXT);
    expect(pullStayEnd(TEXT, 1, NaN)).toBe(TEXT);
    const after = `${TEXT}\nstay 5 min`;
    expect(pullStayEnd(after, 5, 3)).toBe(after);
  });
});
