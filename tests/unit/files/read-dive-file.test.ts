import { Buffer } from 'node:buffer';
import { describe, expect, it } from 'vitest';
import { readDiveFile } from '@/lib/files/read-dive-file';

const open = (
  bytes: Uint8Array,
  ...more: Parameters<typeof readDiveFile> extends [unknown, unknown, ...infer R] ? R : never
) => readDiveFile(bytes, [bytes], ...more);

describe('opening a file of dives', () => {
  it('tells UDDF from CSV by what is in it', async () => {
    const uddf =
      '<uddf version="3.2.2"><profiledata><repetitiongroup><dive><samples><waypoint><depth>0</depth><divetime>0</divetime></waypoint></samples></dive></repetitiongroup></profiledata></uddf>';
    expect(await open(Buffer.from(uddf))).toMatchObject({ ok: true, recordings: [{ rowsAre: 'waypoint' }] });
    expect(await open(Buffer.from('time_s,depth_m\n0,0\n60,9\n'))).toMatchObject({
      ok: true,
      recordings: [{ rowsAre: 'row' }],
    });
  });

  it('asks what the file leaves open, and takes the answer', async () => {
    const asked: string[] = [];
    const result = await open(Buffer.from('time,depth\n0,0\n10,33\n'), {
      answer: ({ ask, choices }) => {
        asked.push(ask);
        return choices.some(({ value }) => value === 'ft') ? 'ft' : 's';
      },
    });
    expect(asked).toEqual(['What is “time” in?', 'What is “depth” in?']);
    expect(result.ok && [...result.recordings[0]!.depthM]).toEqual([0, 10.0584]);
    expect(result.ok && result.notes).toEqual(['The file does not tell the gas.']);
  });

  it('says what it took for granted where nobody answered', async () => {
    const result = await open(Buffer.from('time_s,depth\n0,0\n10,3\n'));
    expect(result.ok && result.notes[0]).toBe('What is “depth” in? Its heading names no unit. Taken: metres.');
  });

  it('reads a spreadsheet’s CSV in UTF-16 with semicolons and decimal commas', async () => {
    const bytes = Buffer.from('\uFEFFZeit (s);Tiefe (m)\r\n0;0,0\r\n10;1,5\r\n', 'utf16le');
    expect(await open(bytes)).toMatchObject({ ok: true, recordings: [{ depthM: Float64Array.of(0, 1.5) }] });
  });

  it('says when letters were read as Western European ones', async () => {
    const result = await open(Buffer.from('temps (s);profondité (m)\n0;0\n10;3\n'.replace('é', 'eur é'), 'latin1'));
    expect(result.ok && result.notes[0]).toContain('not in UTF-8');
  });

  it.each([
    [Buffer.alloc(0), 'The file is empty.'],
    [Buffer.from('PK\u0003\u0004 rest'), 'This is a zip archive or a spreadsheet.'],
    [Buffer.from('just words'), 'No rows of numbers were found in this file: row 1 is “just words”.'],
    [Buffer.from('<svg/>'), 'not a UDDF file'],
  ])('refuses what is neither, in words', async (bytes, what) => {
    const result = await open(bytes);
    expect(result.ok ? '' : result.what).toContain(what);
  });
});
