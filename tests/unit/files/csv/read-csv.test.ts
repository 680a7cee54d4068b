import { describe, expect, it } from 'vitest';
import { guessColumns } from '@/lib/files/csv/guess-columns';
import type { Mapping } from '@/lib/files/csv/csv-mapping';
import { readCsv } from '@/lib/files/csv/read-csv';
import type { Recording } from '@/lib/files/records/record';
import { piecesOf } from '../made-recordings';

async function read(text: string, pieceSize = 11): Promise<readonly Recording[]> {
  const guess = guessColumns(text, true);
  if (!guess.ok) throw new Error(guess.what);
  const result = await readCsv(piecesOf(text, pieceSize), guess.mapping);
  if (!result.ok) throw new Error(result.what);
  return result.recordings;
}

const mapping: Mapping = {
  separator: ',',
  decimal: '.',
  firstRow: 2,
  columns: [
    { role: 'time', unit: 's' },
    { role: 'depth', unit: 'm' },
  ],
};

describe('reading a CSV file', () => {
  it('reads times and depths with their rows', async () => {
    const [dive] = await read('# remark\ntime_s,depth_m\n0,0.0\n\n10,1.5\n20,3.0\n');
    expect([...dive!.timeS]).toEqual([0, 10, 20]);
    expect([...dive!.depthM]).toEqual([0, 1.5, 3]);
    expect([...dive!.row]).toEqual([3, 5, 6]);
  });

  it('reads every unit into seconds and metres', async () => {
    const [feet] = await read('time (min);depth (ft)\n0;0\n0,5;33\n1,25;100\n');
    expect([...feet!.timeS]).toEqual([0, 30, 75]);
    expect([...feet!.depthM]).toEqual([0, 10.0584, 30.48]);
    const [clock] = await read('time (mm:ss),depth (m)\n0:00,0.0\n2:50,18.0\n');
    expect([...clock!.timeS]).toEqual([0, 170]);
  });

  it('counts a time of day from the first sample, past midnight too', async () => {
    const [dive] = await read('time,depth_m\n23:59:50,0.0\n23:59:58,3.0\n00:00:06,5.0\n');
    expect([...dive!.timeS]).toEqual([0, 8, 16]);
  });

  it('reads dates and keeps the beginning', async () => {
    const [dive] = await read('time,depth_m\n2026-05-01T10:00:00Z,0.0\n2026-05-01T10:00:10Z,3.0\n');
    expect([...dive!.timeS]).toEqual([0, 10]);
    expect(dive!.startedAt).toBe('2026-05-01T10:00:00Z');
  });

  it('reads gases as divers write them, each from its row on', async () => {
    const [dive] = await read('time_s,depth_m,gas\n0,0.0,18/45\n10,30.0,18/45\n20,21.0,50%\n30,6.0,oxygen\n');
    expect(dive!.switches).toEqual([
      { timeS: 0, gas: { o2: 0.18, he: 0.45 } },
      { timeS: 20, gas: { o2: 0.5, he: 0 } },
      { timeS: 30, gas: { o2: 1, he: 0 } },
    ]);
  });

  it('reads gases from columns of oxygen and helium', async () => {
    const [dive] = await read('time_s,depth_m,O2 (%),He (%)\n0,0.0,21,35\n10,30.0,50,0\n');
    expect(dive!.switches.map(({ gas }) => gas)).toEqual([
      { o2: 0.21, he: 0.35 },
      { o2: 0.5, he: 0 },
    ]);
  });

  it('makes a recording of each dive and keeps their common clock', async () => {
    const dives = await read('dive,time_s,depth_m\n1,0,0.0\n1,60,18.0\n1,120,0.0\n2,3720,0.0\n2,3780,12.0\n');
    expect(dives.map(({ name }) => name)).toEqual(['Dive 1', 'Dive 2']);
    expect(dives.map(({ clockS }) => clockS)).toEqual([0, 3720]);
    expect([...dives[1]!.timeS]).toEqual([0, 60]);
  });

  it('reads a unit’s own figures, with nothing where it showed nothing', async () => {
    const [dive] = await read('time_s,depth_m,no stop time (min),ceiling (m)\n0,0.0,,0\n10,18.0,56,0\n20,18.0,55,\n');
    expect([...dive!.unit.noStopS!]).toEqual([NaN, 3360, 3300]);
    expect([...dive!.unit.ceilingM!]).toEqual([0, 0, NaN]);
  });

  it('lists what it cannot read with its row, and loses no row', async () => {
    const [dive] = await read('time_s,depth_m\n0,0.0\n10,1.0\n20,deep\n,3.0\n40,4.0\n50\n60,5\n');
    expect(dive!.timeS).toHaveLength(7);
    expect(dive!.unread).toEqual([
      { row: 4, text: 'deep', of: 'depth' },
      { row: 5, text: '', of: 'time' },
      { row: 7, text: '', of: 'depth' },
    ]);
  });

  it('reads the same however the file is cut into pieces', async () => {
    const text = 'time_s;depth_m;gas\r\n0;0,0;air\r\n10;"1,5";air\r\n20;3,25;32%\r\n';
    const whole = await read(text, 1000);
    for (let size = 1; size < 20; size += 1) expect(await read(text, size)).toEqual(whole);
  });

  it('tells how far it is and stops when told to, giving back what it had', async () => {
    const told: number[] = [];
    const text = 'time_s,depth_m\n0,0\n10,1\n20,2\n30,3\n';
    const stopped = await readCsv(piecesOf(text, 8), mapping, {
      onProgress: (characters) => told.push(characters),
      cancelled: () => told.length >= 4,
    });
    expect(told).toEqual([8, 16, 24, 32]);
    expect(stopped).toMatchObject({ ok: false, what: 'Reading was stopped.' });
    expect(stopped.ok ? 0 : stopped.rescued[0]!.timeS.length).toBeGreaterThan(0);
  });

  it.each<[string, Partial<Mapping>, string]>([
    [
      'no depth',
      {
        columns: [
          { role: 'time', unit: 's' },
          { role: 'ignored', unit: 'none' },
        ],
      },
      'No column is marked as the depth.',
    ],
    [
      'two times',
      {
        columns: [
          { role: 'time', unit: 's' },
          { role: 'time', unit: 's' },
          { role: 'depth', unit: 'm' },
        ],
      },
      'More than one column is marked as the time.',
    ],
    [
      'a depth in seconds',
      {
        columns: [
          { role: 'time', unit: 's' },
          { role: 'depth', unit: 's' },
        ],
      },
      'A column that holds the depth cannot be in seconds.',
    ],
    ['two marks between columns', { separator: ', ' }, 'The mark between columns must be one character.'],
  ])('refuses a mapping with %s', async (_, change, what) => {
    expect(await readCsv(['time,depth\n0,0\n'], { ...mapping, ...change })).toMatchObject({ ok: false, what });
  });

  it('refuses a file without a readable row, and one that never ends its row', async () => {
    expect(await readCsv(['time,depth\nx,y\n'], mapping)).toMatchObject({
      ok: false,
      what: 'No row holds a time and a depth that can be read.',
    });
    expect(await readCsv(['time,depth\n'], mapping)).toMatchObject({
      ok: false,
      what: 'No samples were found where they should begin.',
    });
    expect(
      await readCsv(
        Array.from({ length: 20 }, () => 'x'.repeat(65_536)),
        mapping,
      ),
    ).toMatchObject({ ok: false, what: 'Row 1 does not end.' });
  });

  it('refuses more than a million samples, and keeps the million', async () => {
    const block = '1,1\n'.repeat(50_000);
    const result = await readCsv(['time,depth\n', ...Array.from({ length: 21 }, () => block)], mapping);
    expect(result).toMatchObject({ ok: false, what: 'The file holds more than 1,000,000 samples.' });
    expect(result.ok ? 0 : result.rescued[0]!.timeS.length).toBe(1_000_000);
  });

  it('refuses a dive column that counts samples', async () => {
    const rows = Array.from({ length: 1200 }, (_, i) => `${i},${i},1\n`).join('');
    const columns: Mapping['columns'] = [{ role: 'dive', unit: 'none' }, ...mapping.columns];
    const result = await readCsv([`dive,time,depth\n${rows}`], { ...mapping, columns });
    expect(result).toMatchObject({ ok: false, what: 'The column of dive numbers names more than 1000 dives.' });
  });
});
