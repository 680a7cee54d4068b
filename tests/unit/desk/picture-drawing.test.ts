import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markPartPath, markPath } from '@/app/pictures/axes/mark-shapes';
import { spacedOut } from '@/app/pictures/axes/spaced-out';
import { supersaturationColumns } from '@/app/pictures/tissues/supersaturation-columns';
import { columnPath, columnRuns, timeColumns } from '@/app/pictures/axes/time-columns';
import { timeScale } from '@/app/pictures/axes/time-scale';
import { tableSamples } from '@/app/pictures/table-samples';
import { trailSamples } from '@/app/pictures/tissues/pressure-trail';
import { stage } from '@/app/pictures/scene';
import { loadAt } from '@/lib/ascent/figures';
import { supersaturation, supersaturationOf } from '@/lib/ascent/supersaturation';
import { law } from '@/tests/laws/law';

function sceneOf(script: string) {
  const staged = stage(script);
  if (!staged.ok) throw new Error(staged.errors[0]!.message);
  return staged.scene;
}

const AIR = sceneOf(
  'descend to 30 m at 18 m/min\nstay 25 min\nascend to 6 m at 9 m/min\nstay 12 min\nascend to surface at 9 m/min\ninterval 20 h\ndescend to 20 m at 18 m/min\nstay 10 min\nascend to surface at 9 m/min\n',
);
const TRIMIX = sceneOf(
  'gas: 18/45\ngradient factors: 30/80\ndescend to 60 m at 20 m/min\nstay 12 min\nascend to 9 m at 9 m/min\nstay 20 min\nascend to surface at 9 m/min\n',
);

/** The points of a path made of straight lines. */
function pointsOf(path: string): [number, number][] {
  return [...path.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

describe('the columns of a picture', () => {
  it.each([
    ['the whole day', undefined],
    ['a stretch looked at closely', { startS: 1500, endS: 1900 }],
  ])('run on in time over %s, each within its own pixel', (_, view) => {
    const x = timeScale(AIR.timeline, 700, view);
    const columns = timeColumns(AIR.timeline, x, 700);
    expect(columns).toHaveLength(701);
    columns.forEach((sample, column) => {
      if (column > 0) expect(sample).toBeGreaterThanOrEqual(columns[column - 1]!);
      expect(AIR.timeline.timeS[sample]!).toBeLessThanOrEqual(x.invert(column) + 1e-5);
    });
  });

  it('lose no corner of the dive', () => {
    const columns = new Set(timeColumns(AIR.timeline, timeScale(AIR.timeline, 700), 700));
    const { leg, length } = AIR.timeline;
    for (let i = 1; i < length; i += 1) if (leg[i] !== leg[i - 1]) expect(columns).toContain(i);
  });
});

describe('a path through columns', () => {
  it('never strays from a figure by as much as a quarter of a pixel, whatever the figures', () => {
    law(
      fc.property(
        fc.array(fc.double({ min: -300, max: 300, noNaN: true }), { minLength: 2, maxLength: 60 }),
        fc.integer({ min: 1, max: 5 }),
        (figures, smooth) => {
          const columns = Int32Array.from({ length: (figures.length - 1) * smooth + 1 }, (_, i) => i);
          const figure = (column: number) => {
            const at = column / smooth;
            const before = figures[Math.floor(at)]!;
            return before + (figures[Math.ceil(at)]! - before) * (at - Math.floor(at));
          };
          const points = pointsOf(columnPath(columns, (sample) => sample, figure));
          for (const column of columns) {
            const next = points.findIndex(([x]) => x >= column);
            const [x1, y1] = points[next]!;
            const [x0, y0] = points[Math.max(0, next - 1)]!;
            const drawn = x1 === x0 ? y1 : y0 + ((y1 - y0) * (column - x0)) / (x1 - x0);
            expect(Math.abs(drawn - figure(column))).toBeLessThan(0.25);
          }
        },
      ),
    );
  });

  it('draws the loading of an hour with a few dozen points', () => {
    const columns = timeColumns(AIR.timeline, timeScale(AIR.timeline, 900), 900);
    const { most } = supersaturationColumns(AIR, columns, 'surfacing');
    expect(
      pointsOf(
        columnPath(
          columns,
          (sample) => AIR.timeline.timeS[sample]! / 10,
          (column) => most[column]! * 200,
        ),
      ).length,
    ).toBeLessThan(150);
  });
});

describe('supersaturations in columns', () => {
  it.each([
    ['air', AIR],
    ['trimix', TRIMIX],
  ])('are those the model gives for each sample on %s, here and at the surface', (_, scene) => {
    const { timeline } = scene;
    const columns = timeColumns(timeline, timeScale(timeline, 300), 300);
    for (const basis of ['now', 'surfacing'] as const) {
      const { values, most, leader } = supersaturationColumns(scene, columns, basis);
      columns.forEach((sample, column) => {
        const around = basis === 'now' ? timeline.ambientBar[sample]! : timeline.surfaceBar;
        const load = loadAt(timeline, sample);
        const largest = supersaturation(load, around);
        expect(values[column * 16 + 6]!).toBeCloseTo(supersaturationOf(load, 6, around), 5);
        expect(most[column]!).toBeCloseTo(largest.value, 5);
        expect(leader[column]).toBe(largest.leader);
      });
    }
  });
});

describe('runs of columns', () => {
  it('join neighbours of one value and leave zeros out', () => {
    expect(columnRuns([0, 0, 2, 2, 3, 0, 3])).toEqual([
      { value: 2, from: 2, to: 4 },
      { value: 3, from: 4, to: 5 },
      { value: 3, from: 6, to: 7 },
    ]);
  });
});

describe('labels moved apart', () => {
  it('keep their order, their distance and the edge, where there is room for all', () => {
    law(
      fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 6 }), (places) => {
        const moved = spacedOut(places, 18, 200);
        const order = places.map((_, index) => index).sort((one, other) => places[one]! - places[other]!);
        order.forEach((index, rank) => {
          expect(moved[index]!).toBeGreaterThanOrEqual(-1e-9);
          expect(moved[index]!).toBeLessThanOrEqual(200);
          if (rank > 0) expect(moved[index]! - moved[order[rank - 1]!]!).toBeGreaterThanOrEqual(18 - 1e-9);
        });
      }),
    );
  });

  it('stay where they are when far enough apart', () => {
    expect(spacedOut([120, 10, 60], 18, 200)).toEqual([120, 10, 60]);
  });
});

describe('the samples of a trail and of a table', () => {
  it('hold both ends of every leg', () => {
    const { leg, length, timeS } = AIR.timeline;
    for (const samples of [trailSamples(AIR.timeline), tableSamples(AIR.timeline)]) {
      expect(samples[0]).toBe(0);
      expect(samples.at(-1)).toBe(length - 1);
      for (let i = 1; i < length - 1; i += 1)
        if (leg[i] !== leg[i - 1]) expect(samples, `at ${timeS[i]} s`).toContain(i);
    }
  });

  it('are few enough to read, even of a day', () => {
    expect(tableSamples(AIR.timeline).length).toBeLessThan(110);
  });
});

describe('a mark with helium in it', () => {
  it.each(['round', 'lozenge'] as const)('is whole when all is nitrogen and empty when none is (%s)', (shape) => {
    expect(markPartPath(shape, 10, 20, 8, 1)).toBe(markPath(shape, 10, 20, 8));
    expect(markPartPath(shape, 10, 20, 8, 0)).toBe('');
    expect(markPartPath(shape, 10, 20, 8, 0.5)).toMatch(/^M.+,20[AL]/);
  });
});
