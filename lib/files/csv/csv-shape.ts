import Papa from 'papaparse';
import type { CsvUnit } from './csv-mapping';
import { partedUnit } from './csv-words';

/** How a CSV text is laid out: its separator, its decimal mark, and where the samples begin. */
export interface CsvShape {
  readonly separator: string;
  readonly decimal: '.' | ',';
  /** Whether the decimal mark is certain: `1,200` alone could also be a thousand and more. */
  readonly decimalSure: boolean;
  /** Names of the columns; empty strings where the file has none. */
  readonly headings: readonly string[];
  /** A row of units of their own under the headings, if there is one. */
  readonly unitRow: readonly string[] | undefined;
  /** Line of the file of the first samples, from 1. */
  readonly firstRow: number;
  /** The first rows of samples, as text. */
  readonly rows: readonly (readonly string[])[];
  /** The unit that every cell of a column has after its number, column by column; the rows are without it. */
  readonly cellUnits: readonly (CsvUnit | undefined)[];
  /** Lines above the headings, as cells. */
  readonly above: readonly { readonly row: number; readonly cells: readonly string[] }[];
}

const SEPARATORS = [';', '\t', '|', ',', '^', '~', ' '];
const CLOCK = /^\d+:\d{1,2}(:\d{1,2})?([.,]\d+)?$/;
const DATED = /^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}[T, ]+\d{1,2}:\d{2}/;
const NUMBER = /^[-+\u2212]?(\d+([.,]\d+)?|[.,]\d+|\d{1,3}([.,'\u00a0\u202f]\d{3})+([.,]\d+)?)(e[-+]?\d+)?$/i;

/** Whether a cell could be a sample of something measured: a number, a time or nothing. */
function looksMeasured(cell: string): boolean {
  const text = partedUnit(cell.trim()).number;
  return text === '' || NUMBER.test(text) || CLOCK.test(text) || DATED.test(text);
}

/** Whether a cell is a time of day or of a run, such as 12:30 or 0:12:30. */
export function isClock(cell: string): boolean {
  return CLOCK.test(cell.trim());
}

/** Whether a cell begins with a date and a time of day. */
export function isDated(cell: string): boolean {
  return DATED.test(cell.trim());
}

interface Line {
  readonly row: number;
  readonly text: string;
}

/** Finds the layout from the beginning of a file; undefined when nothing in it looks like rows of samples. */
export function shapeOf(head: string, whole: boolean): CsvShape | undefined {
  const all = linesOf(head, whole);
  const told = toldSeparator(all[0]);
  const lines = told === undefined ? all : all.slice(1);
  let best: { score: number; separator: string; table: Table } | undefined;
  for (const separator of told === undefined ? separatorsOf(lines) : [told]) {
    const table = tableOf(lines, separator);
    if (table && (!best || table.score > best.score + 1e-9)) best = { score: table.score, separator, table };
  }
  if (!best) return undefined;
  const { separator, table } = best;
  const written = table.cells.slice(table.first);
  const cellUnits = Array.from({ length: table.width }, (_, i) => unitOfAll(written.map((row) => row[i] ?? '')));
  const rows = written.map((row) =>
    row.map((cell, i) => (cellUnits[i] === undefined ? cell : partedUnit(cell).number)),
  );
  const { decimal, sure } = decimalOf(rows);
  const above = table.cells.slice(0, table.first);
  const unitRow =
    above.length > 1 && above.at(-1)!.every((cell) => cell.length < 12) && above.at(-2)!.length === table.width
      ? above.at(-1)
      : undefined;
  const headings = unitRow ? above.at(-2)! : (above.at(-1) ?? []);
  return {
    separator,
    decimal,
    decimalSure: sure,
    headings: Array.from({ length: table.width }, (_, i) =>
      (headings.length >= table.width - 1 ? (headings[i] ?? '') : '').trim(),
    ),
    unitRow,
    firstRow: table.rows[table.first]!,
    rows,
    cellUnits,
    above: above.map((cells, i) => ({ row: table.rows[i]!, cells })),
  };
}

/** The unit that stands in every cell of a column that is not empty. */
function unitOfAll(cells: readonly string[]): CsvUnit | undefined {
  const told = cells.filter((cell) => cell.trim() !== '').map((cell) => partedUnit(cell).unit);
  return told.every((unit) => unit === told[0]) ? told[0] : undefined;
}

/** `sep=;` as the first line is how some spreadsheets are told the mark between columns. */
function toldSeparator(first: Line | undefined): string | undefined {
  return /^\uFEFF?"?sep=(.)"?\s*$/i.exec(first?.text ?? '')?.[1];
}

/** The lines that are not blank and not remarks; the last one of a file cut off in the middle is left out. */
function linesOf(head: string, whole: boolean): Line[] {
  const texts = head.split(/\r\n|\r|\n/);
  if (!whole && texts.length > 1) texts.pop();
  return texts
    .map((text, i) => ({ row: i + 1, text }))
    .filter(({ text }) => text.trim() !== '' && !isRemark(text))
    .slice(0, 200);
}

/** A line that begins with # is a remark, also where a spreadsheet has put it in quotation marks. */
function isRemark(line: string): boolean {
  return /^\s*"?#/.test(line);
}

/** The usual separators, and any other mark that stands equally often in most lines. */
function separatorsOf(lines: readonly Line[]): string[] {
  const last = lines.slice(-20);
  const marks = new Set(last.flatMap(({ text }) => text.match(/[^\p{L}\p{N}\s"'.,:;+\u2212|\t^~-]/gu) ?? []));
  const steady = [...marks].filter((mark) => {
    const counts = last.map(({ text }) => text.split(mark).length);
    return mark.length === 1 && counts.every((count) => count === counts[0]);
  });
  return [...SEPARATORS, ...steady];
}

interface Table {
  readonly cells: readonly (readonly string[])[];
  readonly rows: readonly number[];
  /** Index of the first line of samples. */
  readonly first: number;
  readonly width: number;
  readonly score: number;
}

function tableOf(lines: readonly Line[], separator: string): Table | undefined {
  const cells = lines.map(({ text }) => cellsOf(text, separator));
  // Lines of samples are those at the end of the head: headings and remarks come before them.
  const width = modalWidth(cells.slice(-50));
  if (width < 2) return undefined;
  let first = cells.findIndex((row) => row.length === width && isSamples(row));
  if (first < 0) return undefined;
  // One measured row among words is not yet the table: the one after it must be measured too.
  while (first + 1 < cells.length && !isSamples(cells[first + 1]!) && cells.slice(first + 1).some(isSamples))
    first += 1;
  const body = cells.slice(first);
  const even = body.filter((row) => row.length === width).length / body.length;
  const all = body.flat();
  const measured = all.filter(looksMeasured).length / all.length;
  const heading = cells[first - 1];
  // Headings that do not fit the rows speak against a separator: a decimal comma taken for one, say.
  const fits = heading === undefined || heading.length === width ? 1 : 0.8;
  return { cells, rows: lines.map(({ row }) => row), first, width, score: even * measured * fits };
}

function isSamples(row: readonly string[]): boolean {
  const told = row.filter((cell) => cell.trim() !== '');
  return told.length >= 2 && told.filter(looksMeasured).length >= 2;
}

/** The cells of one line, with quotation marks taken off; spaces as separators count once in a row. */
function cellsOf(line: string, separator: string): string[] {
  if (separator === ' ') return line.trim().split(/ +/);
  const parsed = Papa.parse<string[]>(line, { delimiter: separator, newline: '\n' });
  return parsed.data[0] ?? [];
}

function modalWidth(cells: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of cells) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  return [...counts].sort((one, other) => other[1] - one[1] || other[0] - one[0])[0]?.[0] ?? 0;
}

function decimalOf(rows: readonly (readonly string[])[]): { decimal: '.' | ','; sure: boolean } {
  const numbers = rows
    .flat()
    .map((cell) => cell.trim())
    .filter((cell) => NUMBER.test(cell) || CLOCK.test(cell));
  const commas = numbers.filter((cell) => cell.includes(','));
  const points = numbers.filter((cell) => cell.includes('.'));
  if (commas.length === 0) return { decimal: '.', sure: true };
  const thousands = (cells: readonly string[], mark: string) =>
    cells.every((cell) => new RegExp(`^[-+]?[1-9]\\d{0,2}(\\${mark}\\d{3})+`).test(cell));
  // Where one mark parts thousands wherever it stands, the other marks decimals.
  if (points.length > 0 && thousands(commas, ',') && !thousands(points, '.')) return { decimal: '.', sure: true };
  if (points.length > 0 && thousands(points, '.') && !thousands(commas, ',')) return { decimal: ',', sure: true };
  if (commas.length <= points.length) return { decimal: '.', sure: false };
  return { decimal: ',', sure: points.length === 0 && !thousands(commas, ',') };
}
