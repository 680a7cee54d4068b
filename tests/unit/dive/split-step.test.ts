import { describe, expect, it } from 'vitest';
import { splitStep } from '@/lib/dive/edit/split-step';

const LINES = [
  'descend to 30 m at 18 m/min # quick',
  'stay 20 min',
  'ascend to 5 m at 9 m/min',
  'switch to 50%',
  'ascend to surface in 1 min # at last',
  'interval 1 h',
  'descend to 17 m in 60 s',
  'stay 3 s',
  'stay 1 s',
  'ascend to 16.9 m at 9 m/min',
  'ascend to surface in 61 s',
];
const TEXT = LINES.join('\n');

/** The line of a step and the one after it, once the step is cut; the rest has to be as it was. */
function cut(text: string, step: number, share: number): string[] {
  const before = text.split('\n');
  const after = splitStep(text, step, share).split('\n');
  expect(after).toHaveLength(before.length + 1);
  expect(after.toSpliced(step, 2)).toEqual(before.toSpliced(step, 1));
  return after.slice(step, step + 2);
}

describe('a stay cut in two', () => {
  it.each([
    [1, 0.5, ['stay 10 min', 'stay 10 min']],
    [1, 1 / 3, ['stay 6 min 40 s', 'stay 13 min 20 s']],
    [1, 0.00001, ['stay 1 s', 'stay 19 min 59 s']],
    [7, 0.5, ['stay 2 s', 'stay 1 s']],
  ])('is cut at a whole second: step %i at %f', (step, share, lines) => {
    expect(cut(TEXT, step, share)).toEqual(lines);
  });
});

describe('a change of depth cut in two', () => {
  it.each([
    [0, 0.5, ['descend to 15 m at 18 m/min', LINES[0]]],
    [0, 0.333, ['descend to 10 m at 18 m/min', LINES[0]]],
    [0, 0.0001, ['descend to 0.1 m at 18 m/min', LINES[0]]],
    [0, 0.9999, ['descend to 29.9 m at 18 m/min', LINES[0]]],
    [2, 0.5, ['ascend to 17.5 m at 9 m/min', LINES[2]]],
  ])('keeps its rate, and its remark stays with the second part: step %i at %f', (step, share, lines) => {
    expect(cut(TEXT, step, share)).toEqual(lines);
  });

  it('to the surface is an ascent first, and its time is shared', () => {
    expect(cut(TEXT, 4, 0.5)).toEqual(['ascend to 2.5 m in 30 s', 'ascend to surface in 30 s # at last']);
  });

  it.each([
    // 17 m in 60 s: 8.5 m at 30 s; near 27 s and 23 s only 24 s, at 6.8 m, is a depth that can be written.
    [0.5, ['descend to 8.5 m in 30 s', 'descend to 17 m in 30 s']],
    [0.45, ['descend to 6.8 m in 24 s', 'descend to 17 m in 36 s']],
    [0.38, ['descend to 6.8 m in 24 s', 'descend to 17 m in 36 s']],
    // 0.1 m is reached after 60 · 0.1/17 s.
    [0.001, ['descend to 0.1 m in 0.352941176 s', 'descend to 17 m in 59.647058824 s']],
  ])('in a given time is cut at a whole second if there is one near: at %f', (share, lines) => {
    expect(cut(TEXT, 6, share)).toEqual(lines);
  });

  it('in a time that gives no whole second is cut at the nearest depth', () => {
    // From 16.9 m in 61 s: 61 · 8.5/16.9 s to 8.4 m.
    expect(cut(TEXT, 10, 0.5)).toEqual(['ascend to 8.4 m in 30.680473373 s', 'ascend to surface in 30.319526627 s']);
  });

  it('is cut at whole feet where it is written in feet, and times in the manner they are written', () => {
    const feet = [
      'Descend to 100ft at 60 ft/min',
      'stay 5 min',
      'ascend to 20 ft in 2:00',
      'surface at 30 ft/min',
    ].join('\n');
    expect(cut(feet, 0, 0.333)).toEqual(['Descend to 33ft at 60 ft/min', 'Descend to 100ft at 60 ft/min']);
    expect(cut(feet, 2, 0.3)).toEqual(['ascend to 76 ft in 0:36', 'ascend to 20 ft in 1:24']);
    expect(cut(feet, 3, 0.05)).toEqual(['ascend to 19 ft at 30 ft/min', 'surface at 30 ft/min']);
  });
});

describe('a step that can’t be cut', () => {
  it.each([
    ['a change of gas', 3, 0.5],
    ['an interval', 5, 0.5],
    ['a stay of a second', 8, 0.5],
    ['the last second of a stay', 1, 0.99999],
    ['a way of a tenth of a metre', 9, 0.5],
    ['a step at its start', 0, 0],
    ['a step at its end', 0, 1],
    ['a step that is not there', 99, 0.5],
  ])('comes back as it was: %s', (_, step, share) => {
    expect(splitStep(TEXT, step, share)).toBe(TEXT);
  });
});
