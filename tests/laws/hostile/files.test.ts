import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkRecord } from '@/lib/files/records/check-record';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { answerQuestion, guessColumns } from '@/lib/files/csv/guess-columns';
import { readDiveFile } from '@/lib/files/read-dive-file';
import { recordingsOfTimeline } from '../../unit/files/record-of-timeline';
import { repairRecord } from '@/lib/files/records/repair-record';
import { HEAD_BYTES } from '@/lib/files/text-of-bytes';
import { writeUddf } from '@/lib/files/uddf/write-uddf';
import { parseScript, writeScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import { scenarios } from '@/content/scenarios/scenarios';
import { damagedLines, expectUnpolluted, PATIENCE_MS, promptlyDone } from './hostile';
import { law } from '../law';
import { diveOf } from '../../unit/read';

/** What a person is led through with a file: read, checked, repaired by consent, made a dive, opened as a script. */
async function bring(bytes: Uint8Array): Promise<void> {
  const pieces = Array.from({ length: Math.ceil(bytes.length / 65_536) }, (_, i) =>
    bytes.subarray(i * 65_536, (i + 1) * 65_536),
  );
  const result = await readDiveFile(bytes.subarray(0, HEAD_BYTES), pieces);
  if (!result.ok) {
    expect(result.what).toMatch(/\S/);
    expect(result.mend).toMatch(/\S/);
    expect(`${result.what} ${result.mend}`).not.toMatch(/undefined(?! entity)|\[object|call stack/);
  }
  const recordings = result.ok ? result.recordings : result.rescued;
  for (const recording of recordings.slice(0, 5)) {
    for (const { what } of checkRecord(recording).findings) expect(what).toMatch(/\S/);
    const repaired = repairRecord(recording, () => true).recordings;
    for (const one of repaired.slice(0, 5)) {
      const made = diveFromRecords([one]);
      if (!made.ok) {
        expect(made.what).toMatch(/\S/);
        continue;
      }
      const { dive } = made.value;
      // What was brought can be opened: its script reads back.
      const read = parseScript(writeScript(dive));
      expect(read.ok ? [] : read.errors).toEqual([]);
      const { nitrogenBar, depthM } = computeTimeline(dive, 60);
      expect(nitrogenBar.some(Number.isNaN) || depthM.some(Number.isNaN)).toBe(false);
    }
  }
  expectUnpolluted();
}

const brought = (bytes: Uint8Array, patienceMs?: number) => promptlyDone(() => bring(bytes), patienceMs);

const bytesOf = (text: string) => new TextEncoder().encode(text);

const UDDF = scenarios.slice(0, 2).map(({ script }) => {
  return writeUddf(recordingsOfTimeline(computeTimeline(diveOf(script), 60)));
});
const CSV = ['quarry-clean.csv', 'two-dives-with-faults.csv'].map((name) =>
  readFileSync(`content/records/${name}`, 'utf8').split('\n').slice(0, 120).join('\n'),
);

const SPOILT = [
  ',',
  ';',
  '\t',
  '""',
  "'",
  '-0',
  '-1',
  '1e308',
  '1e-308',
  '1e400',
  '-1e400',
  'Infinity',
  '0x10',
  '1,5',
  '1.5',
  '1.234.567,8',
  '99999999999999999999',
  '0.0000001',
  '350',
  '351',
  '2:50',
  '99:99',
  '1:2:3:4',
  '2026-11-25T10:00:00Z',
  '2026-99-99',
  '#',
  '#REF!',
  '=1+1',
  'time',
  'depth',
  'm',
  'ft',
  'psi',
  'K',
  'air',
  '32%',
  '18/45',
  '0/0',
  'constructor',
  '\ud800',
  '\ufeff',
  'é',
  '\r',
  '\r\n\r\n',
  '<',
  '>',
  '&',
  '&x;',
  '&#0;',
  '&#1114112;',
  '&lt;',
  '<!DOCTYPE x [<!ENTITY a "b">]>',
  '<!ENTITY a SYSTEM "file:///etc/passwd">',
  '<![CDATA[',
  ']]>',
  '<!--',
  '-->',
  '<?xml?>',
  '</dive>',
  '</uddf>',
  '<dive>',
  '<waypoint>',
  '<depth>1e308</depth>',
  '<divetime>-1</divetime>',
  '<divetime>1e308</divetime>',
  '<switchmix ref="__proto__"/>',
  '<mix id="a"><o2>2</o2></mix>',
  'x'.repeat(5000),
  '9'.repeat(400),
];

describe('a file of dives with lines lost, doubled, swapped or spoilt', () => {
  it.each([
    ['UDDF', UDDF],
    ['CSV', CSV],
  ] as const)('of %s is read, repaired and opened, or refused in words', async (_, files) => {
    await law(
      fc.asyncProperty(
        fc.constantFrom(...files).chain((text) => damagedLines(text, SPOILT, 4)),
        (text) => brought(bytesOf(text)),
      ),
      150,
    );
  });

  it.each([
    ['UDDF', UDDF],
    ['CSV', CSV],
  ] as const)('of %s with bytes turned, lost or cut off is too', async (_, files) => {
    await law(
      fc.asyncProperty(
        fc.constantFrom(...files),
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 20 }),
        fc.option(fc.nat()),
        (text, changes, cut) => {
          const bytes = bytesOf(text);
          for (const [at, value] of changes) bytes[at % bytes.length] = value;
          return brought(cut === null ? bytes : bytes.subarray(0, cut % bytes.length));
        },
      ),
      100,
    );
  });
});

const DIVE = (samples: string) =>
  `<?xml version="1.0"?><uddf version="3.2.2"><profiledata><repetitiongroup><dive id="a"><samples>${samples}</samples></dive></repetitiongroup></profiledata></uddf>`;

describe('a file that was made to be slow or to overflow', () => {
  it.each([
    [
      'entities of entities',
      `<?xml version="1.0"?><!DOCTYPE uddf [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 12 }, (_, i) => `<!ENTITY a${i} "${`&a${i === 0 ? '' : i - 1};`.repeat(10)}">`).join('')}]><uddf version="3.2.2">&a11;</uddf>`,
    ],
    ['elements in elements', `<?xml version="1.0"?><uddf version="3.2.2">${'<a>'.repeat(100_000)}`],
    [
      'attributes without end',
      `<?xml version="1.0"?><uddf ${Array.from({ length: 30_000 }, (_, i) => `a${i}="1"`).join(' ')}>`,
    ],
    ['a comment without end', `<?xml version="1.0"?><uddf version="3.2.2"><!--${'-x'.repeat(300_000)}`],
    ['open brackets', `<?xml version="1.0"?><uddf>${'<'.repeat(500_000)}`],
    [
      'absurd times and depths',
      DIVE(
        ['0 0', '1e-9 10', '1e-8 9', '1e308 10', '-1e308 5', 'NaN 3', 'Infinity 2', '60 1e308', '61 -1e308', '120 0']
          .map(
            (pair) =>
              `<waypoint><divetime>${pair.split(' ')[0]}</divetime><depth>${pair.split(' ')[1]}</depth></waypoint>`,
          )
          .join(''),
      ),
    ],
    [
      'samples a billionth of a second apart',
      DIVE(
        Array.from(
          { length: 2000 },
          (_, i) => `<waypoint><divetime>${i * 1e-9}</divetime><depth>${i % 7}</depth></waypoint>`,
        ).join(''),
      ),
    ],
    ['a quotation that is never closed', `time,depth\n0,0\n1,"${'x,\n'.repeat(150_000)}`],
    ['a row of commas', `time,depth\n${','.repeat(500_000)}\n`],
    ['one endless cell', `time,depth\n0,${'9'.repeat(500_000)}\n`],
    ['a head of quotation marks', '"'.repeat(500_000)],
    ['a head of line ends', '\n'.repeat(500_000)],
    ['a head of separators of every kind', ',;\t|'.repeat(100_000)],
    ['columns without end', `${Array.from({ length: 50_000 }, (_, i) => `c${i}`).join(',')}\n${'1,'.repeat(50_000)}\n`],
    ['names everything shares', 'time,depth,__proto__,constructor\n0,0,1,2\n60,10,1,2\n120,0,1,2\n'],
    [
      'absurd numbers',
      `time (s),depth (m)\n${['0,0', '1e-9,5', '1e308,10', '-5,3', 'NaN,2', '1e400,1', '60,1e308', '61,-1e308', '62,0.1e-300', '120,0'].join('\n')}\n`,
    ],
  ])('%s is read or refused in time', async (_, text) => {
    await brought(bytesOf(text), 3 * PATIENCE_MS);
    const guess = guessColumns(text.slice(0, HEAD_BYTES), true);
    if (guess.ok) for (const question of guess.questions) answerQuestion(guess.mapping, question, '__proto__');
  });

  it.each([0x00, 0xff, 0x80, 0xfe, 0x22])('half a million bytes of one kind are refused in time: %i', async (byte) => {
    await brought(new Uint8Array(500_000).fill(byte), 3 * PATIENCE_MS);
  });
});
