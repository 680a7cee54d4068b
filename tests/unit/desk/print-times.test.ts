import { describe, expect, it } from 'vitest';
import { MOST_ROWS, printedSamples } from '@/app/desk/keep/print-times';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveOf, down, stay, up } from '../rules/made-dives';

const timeline = computeTimeline(diveOf([down(20, 100), stay(1000), up(5, 100), stay(180), up(0, 60)]), 1);
const timesOf = (times: 'points' | 'even', cursorS = 0) =>
  printedSamples(timeline, times, cursorS).map((sample) => timeline.timeS[sample]);

describe('the rows of a printed table', () => {
  it('are where the dive turns, from its start to its very end', () =>
    expect(timesOf('points')).toEqual([0, 100, 1100, 1200, 1380, 1440]));

  it('at even times are so many minutes apart, and the last is the end', () => {
    expect(timesOf('even')).toEqual([0, 120, 240, 360, 480, 600, 720, 840, 960, 1080, 1200, 1320, 1440]);
    expect(timesOf('even').length).toBeLessThanOrEqual(MOST_ROWS + 1);
  });

  it('hold the time at the cursor too, once and in its place', () => {
    expect(timesOf('points', 500)).toEqual([0, 100, 500, 1100, 1200, 1380, 1440]);
    expect(timesOf('points', 1100)).toEqual(timesOf('points'));
  });
});
