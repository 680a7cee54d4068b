import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Step } from '@/lib/dive/dive';
import { computeTimeline, sampleAt, type Timeline } from '@/lib/dive/timeline';
import { checkRecord } from '@/lib/files/records/check-record';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { readDiveFile } from '@/lib/files/read-dive-file';
import { recordingsOfTimeline } from '../../unit/files/record-of-timeline';
import { repairRecord } from '@/lib/files/records/repair-record';
import { decodeState, encodeState } from '@/lib/files/links/share-link';
import { simplify } from '@/lib/files/records/simplify';
import { writeProfileCsv } from '@/lib/files/csv/write-csv';
import { writeUddf } from '@/lib/files/uddf/write-uddf';
import { compartments } from '@/lib/tissue/coefficients';
import { madeRecording, switchTo } from '../../unit/files/made-recordings';
import { law } from '../law';
import { valueOf } from '../../unit/read';

const DRAWS = 200;

const gas = fc.constantFrom(
  { o2: 0.21, he: 0 },
  { o2: 0.32, he: 0 },
  { o2: 0.18, he: 0.45 },
  { o2: 0.5, he: 0 },
  { o2: 0.305, he: 0.123 },
);
const tenth = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((tenths) => tenths / 10);

/** A dive of levels below the surface and back, with gas changes, so many seconds and tenths of metres. */
const dive = fc
  .record({
    first: gas,
    levels: fc.array(
      fc.record({ toM: tenth(1, 60), goS: tenth(30, 400), stayS: tenth(1, 1500), gas: fc.option(gas) }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ first, levels }) => {
    const steps: Step[] = [];
    let depthM = 0;
    for (const { toM, goS, stayS, gas: next } of levels) {
      if (toM !== depthM) steps.push({ kind: toM > depthM ? 'descend' : 'ascend', toM, durationS: goS });
      depthM = toM;
      if (next) steps.push({ kind: 'switch', gas: next });
      steps.push({ kind: 'stay', durationS: stayS });
    }
    steps.push({ kind: 'ascend', toM: 0, durationS: 300 });
    return { first, steps };
  });

const day = fc.array(dive, { minLength: 1, maxLength: 3 }).map((dives): Dive => {
  const steps = dives.flatMap(({ steps: own }, i): Step[] =>
    i === 0 ? own : [{ kind: 'interval', durationS: 1800 + 100 * i }, ...own],
  );
  return { settings: { ...defaultSettings(), gas: dives[0]!.first }, steps, lines: [] };
});

const near = (one: number, other: number): boolean => Math.abs(one - other) < 5e-10;

function expectSame(one: Timeline, other: Timeline): void {
  const apart: string[] = [];
  expect(other.timeS[other.length - 1]).toBeCloseTo(one.timeS[one.length - 1]!, 6);
  for (let i = 0; i < one.length; i += 1) {
    const at = sampleAt(other, one.timeS[i]! + 1e-7);
    if (Math.abs(other.timeS[at]! - one.timeS[i]!) > 1e-6) continue;
    if (!near(other.depthM[at]!, one.depthM[i]!)) apart.push(`depth at ${one.timeS[i]} s`);
    for (let c = 0; c < 16; c += 5)
      for (const gas of ['nitrogenBar', 'heliumBar'] as const)
        if (!near(other[gas][at * 16 + c]!, one[gas][i * 16 + c]!)) apart.push(`${gas} ${c} at ${one.timeS[i]} s`);
  }
  expect(apart).toEqual([]);
}

async function readBack(text: string) {
  const bytes = new TextEncoder().encode(text);
  const result = await readDiveFile(bytes, [bytes]);
  if (!result.ok) throw new Error(result.what);
  return valueOf(diveFromRecords(result.recordings));
}

describe('what is written reads back', () => {
  it.each([
    ['UDDF', writeUddf],
    ['CSV', writeProfileCsv],
  ] as const)('as %s, for any day of dives: the same depths and tissues at every time', async (_, write) => {
    await law(
      fc.asyncProperty(day, async (given) => {
        const { dive: back, tissueErrorBar } = await readBack(write(recordingsOfTimeline(computeTimeline(given, 1e6))));
        expect(tissueErrorBar).toBeLessThan(1e-9);
        expectSame(computeTimeline(given, 60), computeTimeline(back, 60));
      }),
      60,
    );
  });

  it('from a link, for any script and title', () => {
    law(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 500 }),
        fc.option(fc.string({ maxLength: 50 })),
        (script, title) => {
          const encoded = encodeState({ script, title: title ?? undefined });
          expect(encoded.ok && decodeState(encoded.fragment)).toMatchObject({
            ok: true,
            state: title === null ? { script } : { script, title },
          });
        },
      ),
      DRAWS,
    );
  });
});

const messy = fc.array(
  fc.tuple(
    fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 0, max: 3000 }) }, { weight: 1, arbitrary: fc.constant(NaN) }),
    fc.oneof({ weight: 8, arbitrary: tenth(0, 60) }, { weight: 1, arbitrary: fc.constantFrom(NaN, -3, 900, Infinity) }),
  ),
  { minLength: 1, maxLength: 60 },
);

describe('a record, whatever is in it', () => {
  it('can be made a dive of, or of its parts, once every repair is allowed', () => {
    law(
      fc.property(messy, fc.boolean(), (samples, inOrder) => {
        const given = inOrder ? [...samples].sort(([one], [other]) => one - other) : samples;
        const { recordings } = repairRecord(madeRecording(given), () => true);
        for (const recording of recordings) {
          expect(checkRecord(recording).findings.filter(({ blocking }) => blocking)).toEqual([]);
          const made = diveFromRecords([recording]);
          if (!made.ok) expect(made.what).toContain('fewer than two samples');
        }
      }),
      DRAWS,
    );
  });

  it('is not changed by a repair nobody allowed', () => {
    law(
      fc.property(messy, (samples) => {
        const { recordings, done } = repairRecord(madeRecording(samples), () => false);
        expect(recordings).toEqual([madeRecording(samples)]);
        expect(done).toEqual({});
      }),
      DRAWS,
    );
  });

  it('simplified stays within what is allowed, in depth and in tissues', () => {
    const site = { barPerMetre: 0.1, compartments: compartments('C', '1b') };
    const profile = fc.array(tenth(0, 50), { minLength: 2, maxLength: 120 });
    law(
      fc.property(
        profile,
        fc.double({ min: 0.0001, max: 0.05, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (depths, tissueBar, depthM) => {
          const given = {
            timeS: Float64Array.from(depths, (_, i) => i * 20),
            depthM: Float64Array.from(depths),
            switches: [switchTo(0, 0.21)],
          };
          const { kept, tissueErrorBar, depthErrorM } = simplify(given, site, { closeness: { tissueBar, depthM } });
          expect(tissueErrorBar).toBeLessThanOrEqual(tissueBar);
          expect(depthErrorM).toBeLessThanOrEqual(depthM + 1e-12);
          expect([kept[0], kept.at(-1)]).toEqual([0, depths.length - 1]);
        },
      ),
      DRAWS,
    );
  });
});
