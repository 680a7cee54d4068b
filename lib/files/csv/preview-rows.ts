import type { Gas } from '../../physics/gas';
import type { Refusal } from '../../quantity/parsed';
import type { Recording, UnitChannel } from '../records/record';
import { HEAD_BYTES } from '../text-of-bytes';
import { RowScanner } from './csv-cells';
import type { Mapping, Role } from './csv-mapping';
import { readCsv } from './read-csv';

/** What a cell of one of the first rows says, and what it will be read as. */
export interface PreviewCell {
  readonly text: string;
  /** Seconds, metres, °C, a gas or the name of a dive, by the meaning of the column; undefined where it cannot be read. */
  readonly read: number | Gas | string | undefined;
}

export interface PreviewRow {
  /** Line of the file. */
  readonly row: number;
  readonly cells: readonly PreviewCell[];
}

export type Preview = { readonly ok: true; readonly rows: readonly PreviewRow[] } | Refusal;

const ROWS = 6;
/** Enough lines for the first rows of samples, with blank ones and remarks between them. */
const LINES = 40;
const CHANNELS: Partial<Readonly<Record<Role, UnitChannel>>> = {
  noStop: 'noStopS',
  ceiling: 'ceilingM',
  stopDepth: 'stopDepthM',
  stopTime: 'stopTimeS',
};

/**
 * The first rows of samples as a mapping has them read, by the very reader that will read the file.
 * @param head the beginning of the file; its last line may be cut off
 */
export async function previewRows(head: string, mapping: Mapping): Promise<Preview> {
  const all = head.split(/(?<=\r\n|\n|\r(?!\n))/);
  // The last line of a long head may be cut off.
  const sound = head.length < HEAD_BYTES / 4 ? all : all.slice(0, -1);
  const lines = sound.slice(0, mapping.firstRow - 1 + LINES);
  const text = lines.join('');
  const result = await readCsv([text], mapping);
  if (!result.ok) return result;
  const texts = textsByRow(text, mapping.separator);
  const rows = result.recordings.flatMap((recording) =>
    Array.from(recording.row, (row, sample): PreviewRow => {
      const written = texts.get(row) ?? [];
      return {
        row,
        cells: mapping.columns.map(({ role }, column) => ({
          text: written[column] ?? '',
          read: readAs(role, recording, sample),
        })),
      };
    }),
  );
  return { ok: true, rows: rows.sort((one, other) => one.row - other.row).slice(0, ROWS) };
}

function textsByRow(text: string, separator: string): Map<number, string[]> {
  const scanner = new RowScanner(separator);
  const texts = new Map<number, string[]>();
  scanner.scan(text, true, () => {
    texts.set(
      scanner.row,
      Array.from({ length: scanner.cells }, (_, column) => scanner.cell(column)),
    );
  });
  return texts;
}

function readAs(role: Role, recording: Recording, sample: number): PreviewCell['read'] {
  const { timeS, depthM, temperatureC, unit, switches, unread, row, name } = recording;
  const channel = CHANNELS[role];
  if (channel) return told(unit[channel]?.[sample]);
  switch (role) {
    case 'time':
      return told(timeS[sample]);
    case 'depth':
      return told(depthM[sample]);
    case 'temperature':
      return told(temperatureC?.[sample]);
    case 'dive':
      return name;
    case 'gas':
    case 'oxygen':
    case 'helium':
      return unread.some((cell) => cell.of === 'gas' && cell.row === row[sample])
        ? undefined
        : switches.findLast((one) => one.timeS <= timeS[sample]!)?.gas;
    default:
      return undefined;
  }
}

function told(value: number | undefined): number | undefined {
  return value === undefined || Number.isNaN(value) ? undefined : value;
}
