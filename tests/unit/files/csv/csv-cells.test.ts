import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { numberBetween, RowScanner } from '@/lib/files/csv/csv-cells';
import { seeded } from '@/lib/quantity/seeded';
import { SEED } from '@/tests/laws/law';
import { piecesOf } from '../made-recordings';

function scanned(text: string, separator: string, pieceSize: number): { rows: string[][]; lines: number[] } {
  const scanner = new RowScanner(separator);
  const rows: string[][] = [];
  const lines: number[] = [];
  let rest = '';
  const onRow = () => {
    rows.push(Array.from({ length: scanner.cells }, (_, i) => scanner.cell(i)));
    lines.push(scanner.row);
  };
  for (const piece of piecesOf(text, pieceSize)) rest = scanner.scan(rest + piece, false, onRow);
  scanner.scan(rest, true, onRow);
  return { rows, lines };
}

describe('the row scanner', () => {
  it.each([
    ['0,0.0\n10,1.5\n', ','],
    ['0;0,0\r\n10;1,5\r\n20;3,0', ';'],
    ['"0","0,0"\n"10","1,5"\n', ','],
    ['a,"b ""quoted"" c",d\n1,2,3\n', ','],
    ['a,"two\nlines",d\n1,2,3\n', ','],
    ['a\tb\t\n\t\t\n', '\t'],
  ])('finds the cells that Papa Parse finds in %j', (text, separator) => {
    const expected = Papa.parse<string[]>(text, { delimiter: separator }).data.filter(
      (row) => row.length > 1 || row[0] !== '',
    );
    for (const size of [1, 2, 7, 1000]) {
      expect(scanned(text, separator, size).rows.filter((row) => row.length > 1 || row[0] !== '')).toEqual(expected);
    }
  });

  it('finds the cells that Papa Parse finds in seeded random files, however they are cut', () => {
    const random = seeded(SEED);
    const pick = (from: readonly string[]) => from[Math.floor(random() * from.length)]!;
    for (let file = 0; file < 200; file += 1) {
      const cells = Array.from({ length: 12 }, () =>
        pick(['', '1', '12.5', '"a,b"', '"a ""b"""', '"x\ny"', 'z z', '-0.1']),
      );
      const text = cells.map((cell, i) => cell + (i % 4 === 3 ? pick(['\n', '\n']) : ',')).join('');
      const expected = Papa.parse<string[]>(text, { delimiter: ',', newline: '\n' }).data.filter(
        (row) => row.length > 1,
      );
      expect(scanned(text, ',', 1 + Math.floor(random() * 9)).rows).toEqual(expected);
    }
  });

  it('counts lines of the file, those within quotation marks and blank ones included', () => {
    expect(scanned('a,b\n"x\ny",1\n\n5,6\n', ',', 3).lines).toEqual([1, 2, 4, 5]);
  });

  it('counts the same lines whichever line ends are used', () => {
    for (const end of ['\n', '\r\n', '\r']) expect(scanned(`a,b${end}c,d${end}e,f`, ',', 2).lines).toEqual([1, 2, 3]);
  });

  it('takes any run of spaces as one separator', () => {
    expect(scanned('  0   0.0\n 10   1.5  \n', ' ', 4).rows).toEqual([
      ['0', '0.0'],
      ['10', '1.5'],
    ]);
  });

  it('takes a quotation mark that is never closed for an ordinary character, and goes on', () => {
    const text = `1,"2\n${'3,4\n'.repeat(40_000)}`;
    const { rows } = scanned(text, ',', 65_536);
    expect(rows[0]).toEqual(['1', '"2']);
    expect(rows).toHaveLength(40_001);
  });
});

describe('numbers in cells', () => {
  const read = (text: string, decimal = '.') => numberBetween(text, 0, text.length, decimal.charCodeAt(0));

  it('are the numbers the language itself reads, to the last bit', () => {
    const random = seeded(SEED);
    for (let i = 0; i < 5000; i += 1) {
      const text = String((random() * 2 - 1) * 10 ** Math.floor(random() * 12 - 4));
      expect(read(text)).toBe(Number(text));
      const short = (random() * 1000).toFixed(Math.floor(random() * 6));
      expect(read(short)).toBe(Number(short));
    }
  });

  it.each([
    ['12,5', ',', 12.5],
    [' 7 ', '.', 7],
    ['+3.5', '.', 3.5],
    ['−0.5', '.', -0.5],
    ['.5', '.', 0.5],
    ['5.', '.', 5],
    ['1e3', '.', 1000],
    ['-0', '.', 0],
    ['0.1234567890123456789', '.', 0.1234567890123456789],
  ])('reads %j with the decimal mark %j', (text, decimal, value) => {
    expect(read(text, decimal)).toBe(value);
  });

  it.each(['', '-', '.', 'abc', '12.5', '1,2,3', '1 2', '0x10', 'NaN', 'Infinity', '1e', '1e99999', '12m'])(
    'refuses %j where commas mark decimals',
    (text) => {
      expect(read(text, ',')).toBeNaN();
    },
  );
});
