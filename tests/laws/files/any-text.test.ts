import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerQuestion, guessColumns } from '@/lib/files/csv/guess-columns';
import type { Mapping } from '@/lib/files/csv/csv-mapping';
import { readCsv } from '@/lib/files/csv/read-csv';
import { readDiveFile } from '@/lib/files/read-dive-file';
import { readUddf } from '@/lib/files/uddf/read-uddf';
import { decodeState } from '@/lib/files/links/share-link';
import { readStoredDives } from '@/lib/files/records/stored-dives';
import { law } from '../law';

const mapping: Mapping = {
  separator: ',',
  decimal: '.',
  firstRow: 1,
  columns: [
    { role: 'time', unit: 's' },
    { role: 'depth', unit: 'm' },
    { role: 'gas', unit: 'none' },
    { role: 'dive', unit: 'none' },
  ],
};
const csvish = fc
  .array(
    fc.constantFrom(
      '1',
      '2.5',
      ',',
      ';',
      '\n',
      '\r',
      '"',
      ' ',
      '#',
      'air',
      ':',
      '-',
      'é',
      '\u0000',
      'time',
      'depth',
      '10',
      '\t',
    ),
    { maxLength: 200 },
  )
  .map((parts) => parts.join(''));
const xmlish = fc
  .array(
    fc.constantFrom(
      '<uddf version="3.2.2">',
      '<profiledata>',
      '<dive id="a">',
      '<samples>',
      '<waypoint>',
      '<depth>1</depth>',
      '<divetime>2</divetime>',
      '<switchmix ref="x"/>',
      '</waypoint>',
      '</samples>',
      '</dive>',
      '</profiledata>',
      '</uddf>',
      '&amp;',
      '&x;',
      '<!DOCTYPE a>',
      '<![CDATA[',
      ']]>',
      '<!--',
      '-->',
      '<',
      '>',
      '"',
      '\u0000',
      'é',
    ),
    { maxLength: 60 },
  )
  .map((parts) => parts.join(''));

function expectWords(result: { ok: boolean; what?: string; mend?: string }): void {
  if (result.ok) return;
  expect(result.what).toMatch(/\S/);
  expect(result.mend).toMatch(/\S/);
}

describe('any text at all', () => {
  it('is guessed at or refused in words, and its questions take any answer', () => {
    law(
      fc.property(fc.oneof(csvish, fc.string({ unit: 'binary', maxLength: 300 })), fc.string(), (text, answer) => {
        const guess = guessColumns(text, true);
        expectWords(guess);
        if (!guess.ok) return;
        for (const question of guess.questions) {
          answerQuestion(guess.mapping, question, answer);
          for (const { value } of question.choices) answerQuestion(guess.mapping, question, value);
        }
      }),
      500,
    );
  });

  it('read as CSV is read or refused in words, the same however it is cut', async () => {
    await law(
      fc.asyncProperty(csvish, fc.integer({ min: 1, max: 50 }), async (text, size) => {
        const pieces = Array.from({ length: Math.ceil(text.length / size) }, (_, i) =>
          text.slice(i * size, (i + 1) * size),
        );
        const result = await readCsv(pieces, mapping);
        expectWords(result);
        expect(result).toEqual(await readCsv([text], mapping));
      }),
      500,
    );
  });

  it('read as UDDF is read or refused in words', async () => {
    await law(
      fc.asyncProperty(fc.oneof(xmlish, fc.string({ unit: 'binary' })), async (text) =>
        expectWords(await readUddf([text])),
      ),
      500,
    );
  });

  it('or any bytes as a file are read or refused in words', async () => {
    await law(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 400 }),
        fc.constantFrom('', '<?xml version="1.0"?><uddf>', 'time,depth\n0,0\n1,'),
        async (bytes, start) => {
          const file = Uint8Array.from([...new TextEncoder().encode(start), ...bytes]);
          expectWords(await readDiveFile(file, [file]));
        },
      ),
      400,
    );
  });

  it('as a link or as saved dives is read or refused in words', () => {
    law(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.base64String().map((text) => `1.${text}`),
          fc.json(),
        ),
        (text) => {
          expectWords(decodeState(text));
          expectWords(readStoredDives(text));
        },
      ),
      1000,
    );
  });
});
