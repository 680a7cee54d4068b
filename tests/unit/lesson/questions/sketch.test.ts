import { describe, expect, it } from 'vitest';
import { compareSketch, sayMoment } from '@/lib/lesson/questions/compare-sketch';
import { drawAsked } from '@/lib/lesson/questions/drawing-question';
import { closeShare, isClose, sketchAt, type DrawAsked } from '@/lib/lesson/questions/sketch';
import { readMoment, saySketch } from '@/lib/lesson/questions/sketch-in-words';
import { THIRTY, worldFor } from '../made-lessons';
import { valueOf } from '../../read';

const QUESTION = {
  curve: 'noStopMin',
  from: 'start',
  to: 'leaving',
  upTo: '60 min',
  within: '3 min',
  features: [],
  wrong: [],
};

function asked(change: Partial<typeof QUESTION> & { boxes?: string[] } = {}): DrawAsked {
  return valueOf(drawAsked({ ...QUESTION, ...change }, worldFor(THIRTY)));
}

describe('a curve drawn before it is seen', () => {
  it('is held against the engine’s own curve, no higher than the paper', () => {
    const { fromS, toS, truth, upTo, noun } = asked();
    expect([fromS, toS, upTo, noun]).toEqual([0, 1300, 60, 'the no-stop time']);
    expect(truth[0]!.value).toBe(60);
    expect(truth.at(-1)!.value).toBe(0);
  });

  it('is close where it is within the width asked for, and counts as right when it is close for most of the way', () => {
    const question = asked();
    const near = question.truth.map(({ timeS, value }) => ({ timeS, value: value + 2 }));
    expect(closeShare(near, question)).toBe(1);
    expect(compareSketch(near, question, 'metric')).toBe(
      'Your curve is close all the way, within 3 min of the no-stop time.',
    );
    expect(
      isClose(
        [
          { timeS: 0, value: 60 },
          { timeS: 1300, value: 0 },
        ],
        question,
      ),
    ).toBe(false);
  });

  it('is told in a sentence how it differs, and where most', () => {
    const straight = [
      { timeS: 0, value: 60 },
      { timeS: 1300, value: 0 },
    ];
    expect(compareSketch(straight, asked(), 'metric')).toMatch(
      /^You drew it too high most of the way\. You are furthest off at 1:\d\d: you drew \d\d min, and the no-stop time is 1\d min there\.$/,
    );
    const turned = [
      { timeS: 0, value: 20 },
      { timeS: 99, value: 20 },
      { timeS: 200, value: 30 },
      { timeS: 1300, value: 30 },
    ];
    expect(compareSketch(turned, asked(), 'metric')).toContain('You drew it too high most of the way.');
  });

  it('has words of its own for depths, and says where the paper ends before the curve does', () => {
    const ceiling = asked({ curve: 'ceilingM', to: 'surfacing', upTo: '12 m', within: '0.5 m' });
    const deep = ceiling.truth.map(({ timeS, value }) => ({ timeS, value: value + 4 }));
    expect(compareSketch(deep, ceiling, 'metric')).toMatch(/^You drew it too deep most of the way\./);
    expect(compareSketch(deep, ceiling, 'metric')).not.toMatch(/high|low/);
    const low = asked().truth.map(({ timeS }) => ({ timeS, value: 0 }));
    expect(compareSketch(low, asked(), 'metric')).toContain(
      'the no-stop time is beyond the edge of the paper, more than 60 min, there.',
    );
  });

  it('counts its clock from surfacing where it begins there', () => {
    const rest = worldFor(`${THIRTY}interval 60 min\n`);
    const question = {
      ...QUESTION,
      curve: 'tensionBar(1)',
      from: 'surfacing',
      to: 'end',
      upTo: '3 bar',
      within: '0.1 bar',
    };
    const after = drawAsked(question, rest);
    if (!after.ok) throw new Error(after.what);
    expect(sayMoment(after.value.fromS + 90, after.value)).toBe('1:30 after surfacing');
    expect(sayMoment(90, asked())).toBe('1:30');
  });

  it('has its boxes at the ends and where the dive bends', () => {
    // Down in 100 s, 20 min at the bottom.
    expect(asked().boxesS).toContain(100);
    expect(asked().boxesS[0]).toBe(0);
    expect(asked().boxesS.at(-1)).toBe(1300);
    expect(asked().boxesS.length).toBeGreaterThanOrEqual(5);
    expect(asked({ boxes: ['2 min', '10 min', '15 min'] }).boxesS).toEqual([0, 120, 600, 900, 1300]);
  });

  it('runs straight between its points and level beyond them', () => {
    const sketch = [
      { timeS: 10, value: 2 },
      { timeS: 20, value: 4 },
    ];
    expect([0, 10, 15, 20, 30].map((timeS) => sketchAt(sketch, timeS))).toEqual([2, 2, 3, 4, 4]);
    expect(sketchAt([], 5)).toBe(0);
  });

  it.each<[Partial<typeof QUESTION>, string]>([
    [{ curve: 'maxDepthM' }, 'This is not a fact that has a value at every moment.'],
    [{ curve: 'noStopMin at 5 min' }, 'This is not a fact that has a value at every moment.'],
    [{ from: 'leaving', to: 'start' }, 'The curve ends before it begins.'],
    [{ upTo: '60 m' }, 'This is a depth where a time is needed.'],
    [{ upTo: '0 min' }, 'The axis has no height.'],
    [{ to: '90 min' }, 'The script ends at 28:00, before 90:00.'],
  ])('cannot be asked for with %o', (change, what) => {
    expect(drawAsked({ ...QUESTION, ...change }, worldFor(THIRTY))).toMatchObject({ ok: false, what });
  });
});

describe('a curve typed into boxes', () => {
  const minutes = (value: number) => `${value} min`;

  it('is read back as it stands, from left to right, and only where something stands', () => {
    const sketch = [
      { timeS: 0, value: 60 },
      { timeS: 100, value: 11 },
      { timeS: 400, value: 11 },
      { timeS: 700, value: 20 },
    ];
    expect(saySketch(sketch, [0, 100, 400, 700, 1300], asked(), minutes)).toBe(
      'Your curve: 60 min at 0:00, down to 11 min at 1:40, level to 6:40, up to 20 min at 11:40.',
    );
    expect(saySketch([], [0, 1300], asked(), minutes)).toBe('');
  });

  it('goes down where a depth grows', () => {
    const ceiling = asked({ curve: 'ceilingM', to: 'surfacing', upTo: '12 m', within: '0.5 m' });
    const sketch = [
      { timeS: 0, value: 0 },
      { timeS: 900, value: 3 },
      { timeS: 1500, value: 1 },
    ];
    expect(saySketch(sketch, [0, 900, 1500], ceiling, (value) => `${value} m`)).toBe(
      'Your curve: 0 m at 0:00, down to 3 m at 15:00, up to 1 m at 25:00.',
    );
  });

  it.each([
    ['4:30', 270],
    ['4.5', 270],
    [' 4 min', 240],
  ])('takes %s as a moment more', (text, timeS) => {
    expect(readMoment(text, asked())).toEqual({ ok: true, value: timeS });
  });

  it.each(['', 'soon', '0', '30:00', '21:40'])('refuses %j and says what can be written', (text) => {
    expect(readMoment(text, asked())).toMatchObject({
      ok: false,
      mend: 'Write a moment between 0:00 and 21:40, such as 7:13.',
    });
  });

  it('counts moments since surfacing where the axis does', () => {
    const after = { fromS: 1000, toS: 4600, zeroS: 1000, since: 'surfacing' } as const;
    expect(readMoment('10', { ...asked(), ...after })).toEqual({ ok: true, value: 1600 });
  });
});
