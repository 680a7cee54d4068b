import { describe, expect, it } from 'vitest';
import type { FindingKind } from '@/lib/files/records/check-record';
import { consentToKinds, laterS, repairRecord } from '@/lib/files/records/repair-record';
import { madeRecording, switchTo } from '../made-recordings';

type Samples = readonly (readonly [number, number])[];
const rows = (
  samples: Samples,
  ...kinds: Parameters<typeof consentToKinds>[0] extends Iterable<infer K> ? K[] : never
) => {
  const { recordings, done } = repairRecord(madeRecording(samples), consentToKinds(kinds));
  return { samples: recordings.map(({ timeS, depthM }) => [...timeS].map((time, i) => [time, depthM[i]])), done };
};

describe('repairing a record', () => {
  const broken: Samples = [
    [0, 0],
    [10, 1],
    [10, 1],
    [20, -0.2],
    [15, 1],
    [30, NaN],
    [40, 2],
    [50, 0],
  ];

  it('does nothing without consent', () => {
    const recording = madeRecording(broken);
    const { recordings, done } = repairRecord(recording, () => false);
    expect(recordings).toEqual([recording]);
    expect(done).toEqual({});
  });

  it('repairs the kinds that were consented to, and nothing else', () => {
    expect(rows(broken, 'negative', 'repeat')).toEqual({
      samples: [
        [
          [0, 0],
          [10, 1],
          [20, 0],
          [15, 1],
          [30, NaN],
          [40, 2],
          [50, 0],
        ],
      ],
      done: { repeat: 1, negative: 1 },
    });
  });

  it('tells how much later a mended recording is than it was written: by the descent that was put in', () => {
    const recording = madeRecording([
      [0, 12],
      [10, 12],
      [10, 12],
      [600, 12],
    ]);
    const mended = (...kinds: FindingKind[]) => repairRecord(recording, consentToKinds(kinds)).recordings[0]!;
    expect(laterS(recording, recording)).toBe(0);
    expect(laterS(mended('repeat'), recording)).toBe(0);
    // 12 m at 18 m/min.
    expect(laterS(mended('start', 'repeat'), recording)).toBe(40);
  });

  it('repairs one row and leaves its like', () => {
    const { recordings } = repairRecord(
      madeRecording([
        [0, 0],
        [10, -1],
        [20, -1],
        [30, 0],
      ]),
      (kind, row) => kind === 'negative' && row === 3,
    );
    expect([...recordings[0]!.depthM]).toEqual([0, 0, -1, 0]);
  });

  it('leaves the recording it was given as it was', () => {
    const recording = madeRecording(broken);
    repairRecord(recording, () => true);
    expect(recording).toEqual(madeRecording(broken));
  });

  it('puts the missing descent and ascent where they are missing', () => {
    expect(
      rows(
        [
          [0, 12],
          [600, 12],
        ],
        'start',
        'end',
      ),
    ).toEqual({
      samples: [
        [
          [0, 0],
          [40, 12],
          [640, 12],
          [720, 0],
        ],
      ],
      done: { start: 1, end: 1 },
    });
  });

  it('keeps rows, gases and figures in step with the samples', () => {
    const recording = madeRecording(
      [
        [0, 12],
        [10, 12],
        [10, 13],
        [600, 12],
      ],
      {
        switches: [switchTo(0, 0.32), switchTo(600, 1)],
        unit: { noStopS: Float64Array.of(1, 2, 3, 4) },
      },
    );
    const [mended] = repairRecord(recording, consentToKinds(['start', 'repeat'])).recordings;
    expect([...mended!.timeS]).toEqual([0, 40, 50, 640]);
    expect([...mended!.row]).toEqual([2, 2, 3, 5]);
    expect([...mended!.unit.noStopS!]).toEqual([NaN, 1, 2, 4]);
    expect(mended!.switches.map(({ timeS }) => timeS)).toEqual([0, 640]);
  });

  it('makes two dives where the time begins again', () => {
    const twice: Samples = [
      [0, 0],
      [60, 10],
      [600, 0],
      [0, 0],
      [60, 20],
      [600, 0],
    ];
    const { recordings, done } = repairRecord(madeRecording(twice), consentToKinds(['restart']));
    expect(recordings.map(({ name, depthM }) => [name, Math.max(...depthM)])).toEqual([
      ['Dive 1', 10],
      ['Dive 1, part 2', 20],
    ]);
    expect(done).toEqual({ restart: 1 });
  });
});
