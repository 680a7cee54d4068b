import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { readDiveFile } from '@/lib/files/read-dive-file';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { valueOf } from '../../read';

describe('the invented clean record', () => {
  it('holds what a unit at 60/85, set to fresh water at 900 m, shows: whole minutes down, stops up to 3 m', async () => {
    const bytes = readFileSync('content/records/quarry-clean.csv');
    const read = await readDiveFile(
      bytes,
      (async function* () {
        yield new Uint8Array(bytes);
      })(),
    );
    if (!read.ok) throw new Error(read.what);
    const altitudeM = 900;
    const made = valueOf(
      diveFromRecords(read.recordings, {
        settings: {
          water: 'fresh',
          altitudeM,
          start: { kind: 'adapted', altitudeM },
          gradientFactors: { low: 0.6, high: 0.85 },
        },
      }),
    );
    const { dive, offsetS } = made;
    const timeline = computeTimeline(dive, 5);
    const { noStopMin, ceilingM } = figuresOf(timeline, dive.settings);
    const { timeS, unit } = read.recordings[0]!;
    const at = Array.from(timeS, (time) => sampleAt(timeline, time + offsetS[0]!));
    expect(Array.from(unit.noStopS!, (seconds) => seconds / 60)).toEqual(
      at.map((i) => Math.min(99, Math.floor(noStopMin[i]! + 1e-6))),
    );
    expect(Array.from(unit.stopDepthM!)).toEqual(at.map((i) => Math.ceil(ceilingM[i]! / 3 - 1e-9) * 3 + 0));
  });
});
