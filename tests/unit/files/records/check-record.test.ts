import { describe, expect, it } from 'vitest';
import { checkRecord } from '@/lib/files/records/check-record';
import { madeRecording } from '../made-recordings';

type Samples = readonly (readonly [number, number])[];

const told = (samples: Samples) =>
  checkRecord(madeRecording(samples)).findings.map(({ kind, row, lastRow, count }) => ({ kind, row, lastRow, count }));

const DESCENT: Samples = [
  [0, 0],
  [10, 2],
  [20, 4],
  [30, 6],
  [40, 8],
  [50, 10],
  [60, 12],
  [70, 14],
  [80, 16],
  [90, 18],
];

describe('looking a record over', () => {
  it('finds nothing in a sound one', () => {
    expect(told([...DESCENT, [200, 0]].slice(0, 10) as Samples)).toEqual([
      { kind: 'end', row: 11, lastRow: 11, count: 1 },
    ]);
    expect(
      told([
        [0, 0],
        [60, 10],
        [300, 10],
        [400, 0],
      ]),
    ).toEqual([]);
  });

  it('reports a gap between regular samples, and takes long straight lines elsewhere for what they are', () => {
    const gap: Samples = [...DESCENT, [300, 18], [310, 18], [320, 0]];
    expect(told(gap)).toEqual([{ kind: 'gap', row: 12, lastRow: 12, count: 1 }]);
    expect(checkRecord(madeRecording(gap)).findings[0]).toMatchObject({
      what: 'Row 12: nothing was recorded for 3 min 30 s before it. The depth is taken to run straight from 18 m to 18 m.',
      repair: undefined,
      blocking: false,
    });
  });

  it('reports repeats, negative depths, unreadable cells and time going backwards, with their rows', () => {
    expect(
      told([
        [0, 0],
        [10, 1],
        [10, 1],
        [20, -0.2],
        [30, -0.1],
        [25, 1],
        [NaN, 2],
        [40, NaN],
        [50, 0],
      ]),
    ).toEqual([
      { kind: 'repeat', row: 4, lastRow: 4, count: 1 },
      { kind: 'negative', row: 5, lastRow: 6, count: 2 },
      { kind: 'backwards', row: 7, lastRow: 7, count: 1 },
      { kind: 'unreadable', row: 8, lastRow: 9, count: 2 },
    ]);
  });

  it('takes a sample less than a millisecond after another for a repeat: no step of a dive is as short', () => {
    expect(
      told([
        [0, 0],
        [10, 1],
        [10.0004, 1.2],
        [20, 2],
        [30, 0],
      ]),
    ).toEqual([{ kind: 'repeat', row: 4, lastRow: 4, count: 1 }]);
    expect(
      told([
        [0, 0],
        [10, 1],
        [10.001, 1],
        [20, 2],
        [30, 0],
      ]),
    ).toEqual([]);
  });

  it('quotes the cell that could not be read', () => {
    const recording = madeRecording(
      [
        [0, 0],
        [10, NaN],
        [20, 0],
      ],
      { unread: [{ row: 3, text: 'deep', of: 'depth' }] },
    );
    expect(checkRecord(recording).findings[0]!.what).toBe('Row 3: “deep” is not a depth.');
  });

  it('reports a sensor’s spike of one sample or three, and not a quick diver', () => {
    expect(told([...DESCENT, [100, 45], [110, 18], [120, 18], [130, 1]] as Samples)[0]).toEqual({
      kind: 'spike',
      row: 12,
      lastRow: 12,
      count: 1,
    });
    expect(
      told([
        [0, 0],
        [2, 1],
        [4, 2],
        [6, 8],
        [8, 8],
        [10, 8],
        [12, 2],
        [14, 1],
      ])[0],
    ).toEqual({ kind: 'spike', row: 5, lastRow: 7, count: 3 });
    // Down at 60 m/min and up again with half a minute between: possible, if unwise.
    expect(
      told([
        [0, 0],
        [10, 10],
        [20, 10],
        [30, 10],
        [40, 10],
        [50, 0],
      ]),
    ).toEqual([]);
  });

  it('reports what no diver can reach as a leap that must be mended', () => {
    const { findings } = checkRecord(
      madeRecording([
        [0, 0],
        [1, 1],
        [2, 40],
        [3, 40],
        [4, 40],
        [300, 40],
        [600, 0],
      ]),
    );
    expect(findings[0]).toMatchObject({ kind: 'jump', row: 4, lastRow: 6, count: 3, blocking: true });
    expect(findings[0]!.what).toBe('Rows 4 to 6: the depth leaps to 40 m, faster than 200 m/min.');
  });

  it('reports depths beyond the model', () => {
    expect(
      told([
        [0, 0],
        [600, 400],
        [1200, 0],
      ]),
    ).toEqual([{ kind: 'tooDeep', row: 3, lastRow: 3, count: 1 }]);
  });

  it('reports a record that begins or ends below the surface', () => {
    expect(
      told([
        [0, 12],
        [600, 12],
      ]).map(({ kind }) => kind),
    ).toEqual(['start', 'end']);
    expect(
      told([
        [10, 2.5],
        [600, 12],
        [700, 0],
      ]),
    ).toEqual([]);
  });

  it('knows another dive from a clock that runs backwards', () => {
    expect(
      told([
        [0, 0],
        [60, 10],
        [600, 0],
        [0, 0],
        [60, 10],
        [600, 0],
      ]),
    ).toEqual([{ kind: 'restart', row: 5, lastRow: 5, count: 1 }]);
  });

  it('lists at most a hundred of a kind and counts them all', () => {
    const many = Array.from({ length: 1000 }, (_, i) => [i * 10, i % 2 === 0 ? 0.5 : -0.5] as const);
    const { findings, counts } = checkRecord(madeRecording(many));
    expect(findings.filter(({ kind }) => kind === 'negative')).toHaveLength(100);
    expect(counts.negative).toBe(500);
  });
});
