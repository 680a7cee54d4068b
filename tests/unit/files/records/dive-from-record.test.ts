import { describe, expect, it } from 'vitest';
import { computeTimeline, sampleAt, tissuesAt } from '@/lib/dive/timeline';
import { parseScript, writeScript } from '@/lib/dive/script';
import { diveFromRecords, type DiveOfRecords, type RecordOptions } from '@/lib/files/records/dive-from-record';
import type { Recording } from '@/lib/files/records/record';
import { madeRecording, noisyDive, switchTo } from '../made-recordings';
import { valueOf } from '../../read';

function made(recordings: readonly Recording[], options?: RecordOptions): DiveOfRecords {
  return valueOf(diveFromRecords(recordings, options));
}

const square = (more: Partial<Recording> = {}) =>
  madeRecording(
    [
      [0, 0],
      [120, 30],
      [1320, 30],
      [1500, 0],
    ],
    more,
  );

describe('a dive made of records', () => {
  it('has the steps of a plain profile, exactly', () => {
    expect(made([square()]).dive.steps).toEqual([
      { kind: 'descend', toM: 30, durationS: 120 },
      { kind: 'stay', durationS: 1200 },
      { kind: 'ascend', toM: 0, durationS: 180 },
    ]);
  });

  it('breathes the recorded gases, each from its moment on', () => {
    const { dive } = made([square({ switches: [switchTo(0, 0.32), switchTo(700, 0.5)] })]);
    expect(dive.settings.gas).toEqual({ o2: 0.32, he: 0 });
    expect(dive.steps[2]).toEqual({ kind: 'switch', gas: { o2: 0.5, he: 0 } });
  });

  it('says when it had to assume air', () => {
    expect(made([square()]).notes).toEqual(['The file does not tell the gas: air is assumed.']);
    expect(made([square()], { settings: { gas: { o2: 0.32, he: 0 } } }).notes).toEqual([]);
  });

  it('takes the site from the file unless told otherwise', () => {
    expect(made([square({ altitudeM: 700, water: 'fresh' })]).dive.settings).toMatchObject({
      altitudeM: 700,
      water: 'fresh',
      start: { kind: 'adapted', altitudeM: 700 },
    });
    expect(made([square({ water: 'fresh' })], { settings: { water: 'salt' } }).dive.settings.water).toBe('salt');
  });

  it('carries the tissues over from one dive to the next', () => {
    const second = square({ name: 'Dive 2', intervalBeforeS: 3600 });
    const { dive, offsetS } = made([square(), second]);
    expect(offsetS).toEqual([0, 5100]);
    const timeline = computeTimeline(dive, 10);
    const after = tissuesAt(timeline, sampleAt(timeline, 1500));
    const before = tissuesAt(timeline, sampleAt(timeline, 5100));
    const fresh = tissuesAt(timeline, 0);
    expect(before.nitrogenBar[7]!).toBeGreaterThan(fresh.nitrogenBar[7]! + 0.05);
    expect(before.nitrogenBar[7]!).toBeLessThan(after.nitrogenBar[7]!);
  });

  it('finds the interval from a shared clock or from dates, and asks where neither tells', () => {
    expect(made([square({ clockS: 0 }), square({ clockS: 5100 })]).offsetS[1]).toBe(5100);
    const dated = [square({ startedAt: '2026-05-01T10:00:00' }), square({ startedAt: '2026-05-01T11:25:00' })];
    expect(made(dated).offsetS[1]).toBe(5100);
    expect(diveFromRecords([square(), square({ name: 'Dive 2' })])).toMatchObject({
      ok: false,
      what: 'The file does not tell the surface interval before “Dive 2”.',
    });
    expect(made([square(), square()], { intervalsS: [0, 3600] }).offsetS[1]).toBe(5100);
  });

  it('goes back to the gas of the day after an interval, and on to the second dive’s own', () => {
    const { dive } = made([
      square({ switches: [switchTo(0, 0.32), switchTo(1320, 1)] }),
      square({ switches: [switchTo(0, 0.28)], intervalBeforeS: 3600 }),
    ]);
    expect(dive.steps.slice(3, 7)).toEqual([
      { kind: 'ascend', toM: 0, durationS: 180 },
      { kind: 'interval', durationS: 3600 },
      { kind: 'switch', gas: { o2: 0.28, he: 0 } },
      { kind: 'descend', toM: 30, durationS: 120 },
    ]);
  });

  it('takes a long stay at the surface within a record for a surface interval, and says so', () => {
    const record = madeRecording([
      [0, 0],
      [60, 10],
      [600, 10],
      [660, 0.2],
      [2000, 0.1],
      [4260, 0],
      [4320, 10],
      [4800, 0],
    ]);
    const { dive, notes } = made([record]);
    expect(dive.steps).toContainEqual({ kind: 'interval', durationS: 3600 });
    expect(notes[0]).toBe('1 h at the surface from 11 min on is taken as a surface interval, breathing air.');
  });

  it('counts a gas changed during such a stay when the next dive begins', () => {
    const record = madeRecording(
      [
        [0, 0],
        [60, 10],
        [600, 10],
        [660, 0],
        [2000, 0],
        [4260, 0],
        [4320, 10],
        [4800, 0],
      ],
      {
        switches: [switchTo(0, 0.32), switchTo(2000, 0.28)],
      },
    );
    expect(made([record]).dive.steps.slice(3)).toEqual([
      { kind: 'interval', durationS: 3600 },
      { kind: 'switch', gas: { o2: 0.28, he: 0 } },
      { kind: 'descend', toM: 10, durationS: 60 },
      { kind: 'ascend', toM: 0, durationS: 480 },
    ]);
  });

  it('begins at the surface at time 0 where the first sample is a little later and deeper', () => {
    expect(
      made([
        madeRecording([
          [10, 2],
          [600, 2],
          [700, 0],
        ]),
      ]).dive.steps[0],
    ).toEqual({ kind: 'descend', toM: 2, durationS: 10 });
  });

  it('puts an ascent after a dive that ends below the surface when another follows, and says so', () => {
    const { dive, notes } = made([
      madeRecording(
        [
          [0, 0],
          [60, 9],
          [600, 9],
        ],
        { clockS: 0 },
      ),
      square({ clockS: 4260 }),
    ]);
    expect(dive.steps[2]).toEqual({ kind: 'ascend', toM: 0, durationS: 60 });
    expect(dive.steps[3]).toEqual({ kind: 'interval', durationS: 3600 });
    expect(notes[0]).toBe('“Dive 1” ends at 9 m (30 ft): an ascent to the surface was put after it.');
  });

  it('ends at the surface where the record ends just below it, so that its script reads', () => {
    const { dive, notes } = made([
      madeRecording([
        [0, 0],
        [60, 9],
        [600, 9],
        [660, 0.8],
      ]),
    ]);
    expect(dive.steps.at(-1)).toEqual({ kind: 'ascend', toM: 0, durationS: 6 });
    expect(notes).toContain('“Dive 1” ends at 0.8 m (3 ft): an ascent to the surface was put after it.');
    expect(parseScript(writeScript(dive)).ok).toBe(true);
  });

  it('stays within what is allowed of a long noisy record, and makes a script that reads back', () => {
    const { dive, tissueErrorBar, depthErrorM } = made([madeRecording(noisyDive(60, 1, 30, 5))]);
    expect(tissueErrorBar).toBeLessThanOrEqual(0.005);
    expect(depthErrorM).toBeLessThanOrEqual(0.5);
    expect(dive.steps.length).toBeLessThan(400);
    const read = parseScript(writeScript(dive));
    expect(read.ok && read.dive.steps).toEqual(dive.steps);
  });

  it.each<[string, readonly (readonly [number, number])[], string]>([
    [
      'time going backwards',
      [
        [0, 0],
        [60, 9],
        [50, 9],
        [90, 0],
      ],
      'Row 4: the time goes backwards to 50 s.',
    ],
    [
      'a depth above the water',
      [
        [0, 0],
        [60, -1],
        [90, -1],
        [99, 0],
      ],
      'Rows 3 to 4: the depth is negative (−1 m).',
    ],
    [
      'no beginning',
      [
        [0, 9],
        [60, 9],
      ],
      'Row 2: the record begins at 9 m, not at the surface.',
    ],
    ['one sample', [[0, 0]], '“Dive 1” has fewer than two samples.'],
  ])('is refused for %s', (_, samples, what) => {
    const result = diveFromRecords([madeRecording(samples)]);
    expect(result).toMatchObject({ ok: false, what });
  });

  it('is refused where there is no record', () => {
    expect(diveFromRecords([])).toMatchObject({ ok: false, what: 'There is no dive in the file.' });
  });
});
