import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadLessons } from '@/app/lessons/load-lessons';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { drawAsked } from '@/lib/lesson/questions/drawing-question';
import { drawnAt, isWhole, withoutTyped, withStroke, withTyped } from '@/lib/lesson/questions/draw-sketch';
import { ignorantSketches, judgeSketch, typedTruth } from '@/lib/lesson/questions/judge-sketch';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { told } from '../made-lessons';

const draws = loadLessons().flatMap(({ slug, lesson }) => {
  const worlds = lessonWorld(lesson);
  return lesson.steps.flatMap((step) => {
    if (step.kind !== 'predict' || !step.draw) return [];
    const world = worlds.about(step.script);
    const asked = drawAsked(step.draw, world);
    if (!asked.ok) throw new Error(asked.what);
    const judge = (sketch: Sketch) => judgeSketch(step.draw!.features, asked.value, sketch, world);
    return [{ name: `${slug}#${step.id}`, asked: asked.value, judge }];
  });
});

describe.each(draws)('the curve asked for at $name', ({ asked, judge }) => {
  it('counts as right when it is the true one, drawn or typed into the boxes', () => {
    expect(judge(asked.truth)).toMatchObject({ right: true });
    expect(judge(asked.truth).features.filter(({ met }) => !met)).toEqual([]);
    expect(judge(typedTruth(asked)).right).toBe(true);
  });

  it('never counts as right when it is level, straight, upside down or back to front', () => {
    expect(ignorantSketches(asked).filter(({ sketch }) => judge(sketch).right)).toEqual([]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const level = [asked.fromS, asked.toS].map((timeS) => ({ timeS, value: share * asked.upTo }));
        expect(judge(level).right).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
});

it('is judged by features in every shipped lesson that asks for a curve', () => {
  expect(draws.length).toBeGreaterThanOrEqual(16);
});

describe('a curve without its drop', () => {
  const { judge, asked } = draws.find(({ name }) => name === '04-no-stop-time#draw-the-fall')!;
  const typed = (...values: number[]) =>
    values.map((value, i) => ({ timeS: asked.fromS + ((asked.toS - asked.fromS) * i) / (values.length - 1), value }));

  it('is not close, and is told that the drop is missing', () => {
    const judged = judge(typed(13, 8, 3, 0, 0));
    expect(judged.right).toBe(false);
    expect(judged.features.find(({ met }) => !met)!.because).toContain('There is no drop in it.');
  });
});

const CURVE = (features: string, boxes = '') => `title: A made lesson
summary: For tests.
level: first steps
minutes: 5
objectives: [You can read it.]
scripts:
  main:
    title: Thirty
    script: |
      descend to 30 m at 18 m/min
      stay 20 min
      ascend to surface at 9 m/min
steps:
  - kind: predict
    id: draw
    title: Draw it
    text: Draw it.
    draw:
      curve: depthM
      upTo: 40 m
      within: 2 m${boxes}
      features: ${features}
    after: So.
`;

describe('the checker of lessons', () => {
  it('refuses features that the true curve lacks', () => {
    const [fault, more] = told(
      CURVE(
        '[{ name: high, holds: drawn at leaving < 5 m, because: No. }, { name: low, holds: drawn at start < 1 m, because: No. }]',
      ),
    );
    expect(fault).toContain('This is not so: drawn at leaving < 5 m.');
    expect(more).toBeUndefined();
  });

  it('refuses features that a level line has as well', () => {
    expect(told(CURVE('[{ name: deep, holds: drawn at leaving > 5 m, because: No. }]'))).toEqual([
      '22: A level line would count as right. Add a feature that it lacks, or give one more weight.',
    ]);
  });
});

describe('a curve in the drawing', () => {
  const point = (timeS: number, value: number) => ({ timeS, value });

  it('takes the last stroke over what was there', () => {
    const first = withStroke([], point(0, 1), point(100, 1));
    const second = withStroke(first, point(60, 5), point(40, 5));
    expect(second).toEqual([point(0, 1), point(40, 5), point(60, 5), point(100, 1)]);
    expect(isWhole(second, { fromS: 0, toS: 100 })).toBe(true);
    expect(isWhole(withStroke([], point(20, 1), point(100, 1)), { fromS: 0, toS: 100 })).toBe(false);
  });

  it('joins a typed value straight to the boxes beside it, and keeps what lies beyond them', () => {
    const boxes = [0, 50, 100];
    const typed = withTyped(withTyped([], boxes, 0, 2), boxes, 2, 4);
    expect(drawnAt(typed, 50)).toBe(3);
    const bent = withTyped(typed, boxes, 1, 9);
    expect([25, 50, 75].map((timeS) => drawnAt(bent, timeS))).toEqual([5.5, 9, 6.5]);
    expect(drawnAt(withoutTyped(bent, 50), 50)).toBe(3);
  });
});
