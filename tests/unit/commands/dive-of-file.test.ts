import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { diveOfFile } from '@/app/commands/readings/dive-of-file';
import { BadInput } from '@/app/commands/bad-input';
import { recordingsOfTimeline } from '../files/record-of-timeline';
import { writeUddf } from '@/lib/files/uddf/write-uddf';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveOf } from '../read';

const bytes = (text: string) => new TextEncoder().encode(text);
const SCRIPT = 'descend to 18 m at 18 m/min\nstay 10 min\nascend to surface at 9 m/min\n';
const CSV = 'time_s,depth_m\n0,0\n60,18\n660,18\n780,0\n';
const faulty = new Uint8Array(readFileSync('content/records/two-dives-with-faults.csv'));

function uddf(): string {
  return writeUddf(recordingsOfTimeline(computeTimeline(diveOf(SCRIPT), 60)));
}
const steps = async (file: string, text: string) =>
  (await diveOfFile(file, bytes(text), false)).dive.steps.map((step) => step.kind);

describe('the dive in a file given to a command', () => {
  it.each([
    ['a script, by its content', 'x.txt', SCRIPT],
    ['CSV, by its ending', 'x.csv', CSV],
    ['CSV on standard input, by its content', '-', CSV],
    ['UDDF, by its ending', 'x.uddf', uddf()],
    ['UDDF on standard input, by its content', '-', uddf()],
  ])('is read from %s', async (_what, file, text) => {
    expect(await steps(file, text)).toEqual(['descend', 'stay', 'ascend']);
  });

  it('says where a script goes wrong, as for any script', async () => {
    await expect(diveOfFile('-', bytes('descend to 18 m\n'), false)).rejects.toThrow(/^-:1:\d+: /);
  });

  it('names the row of the first fault of a record, and repairs only when told to', async () => {
    await expect(diveOfFile('r.csv', faulty, false)).rejects.toThrow(BadInput);
    await expect(diveOfFile('r.csv', faulty, false)).rejects.toThrow(/^r\.csv:63:1: .*--repair/);
    const { dive, warnings } = await diveOfFile('r.csv', faulty, true);
    expect(dive.steps.some((step) => step.kind === 'interval')).toBe(true);
    expect(warnings.find(({ line }) => line === 253)?.message).toContain('negative');
  });

  it('names the line of XML that is not well-formed', async () => {
    await expect(diveOfFile('x.uddf', bytes('<uddf>\n<a></b>\n</uddf>'), false)).rejects.toThrow(/^x\.uddf:2:1: /);
  });
});
