import { CsvSamples } from './csv-samples';
import { RowScanner } from './csv-cells';
import { faultOfMapping, type Mapping } from './csv-mapping';
import { MAX_FILE_BYTES, type FileResult, type Hooks } from '../records/record';
import { CANCELLED, refusalOf, RefusedFile, tooLarge } from '../refused-file';
import type { Pieces } from '../text-of-bytes';

/**
 * Reads a CSV file, piece by piece, as its mapping says. Nothing is mended: cells that cannot be read become NaN and are
 * listed with their rows. A column of dive numbers makes a recording of each.
 */
export async function readCsv(pieces: Pieces<string>, mapping: Mapping, hooks: Hooks = {}): Promise<FileResult> {
  const fault = faultOfMapping(mapping);
  if (fault) return { ok: false, ...fault, rescued: [] };
  const scanner = new RowScanner(mapping.separator);
  const samples = new CsvSamples(mapping, scanner);
  const onRow = () => samples.take();
  let read = 0;
  let rest = '';
  try {
    for await (const piece of pieces) {
      if (hooks.cancelled?.()) throw CANCELLED;
      read += piece.length;
      if (read > MAX_FILE_BYTES) throw tooLarge(MAX_FILE_BYTES / 1e6);
      rest = scanner.scan(rest + piece, false, onRow);
      if (rest.length > LONGEST_ROW)
        throw new RefusedFile(
          `Row ${scanner.row} does not end.`,
          'Check that this is a CSV file with one sample to a line.',
        );
      hooks.onProgress?.(read);
    }
    scanner.scan(rest, true, onRow);
    return samples.result();
  } catch (thrown) {
    return refusalOf(thrown, samples.soFar());
  }
}

/** No row of samples is longer than this, characters. */
const LONGEST_ROW = 1_000_000;
