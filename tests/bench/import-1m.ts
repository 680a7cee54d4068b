import { performance } from 'node:perf_hooks';
import { computeTimeline } from '@/lib/dive/timeline';
import { checkRecord } from '@/lib/files/records/check-record';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { guessColumns } from '@/lib/files/csv/guess-columns';
import { readCsv } from '@/lib/files/csv/read-csv';
import { textOfBytes } from '@/lib/files/text-of-bytes';
import { valueOf } from '../unit/read';

const SAMPLES = 1_000_000;
const PIECE_BYTES = 65_536;
/** One dive and the stay at the surface after it, s. */
const ROUND_S = 5000;

/** Two samples a second: so many are less than the week a script follows. */
const SAMPLE_S = 0.5;

/**
 * Nearly six days of invented dives with a tenth of a metre of swell and noise: the bytes of a CSV file. Every figure comes
 * from its time alone, so the file is always the same.
 */
function millionSampleFile(): Uint8Array {
  const rows: string[] = ['time_s,depth_m'];
  for (let t = 0; t < SAMPLES * SAMPLE_S; t += SAMPLE_S) {
    const within = t % ROUND_S;
    const deepestM = 12 + (Math.floor(t / ROUND_S) % 6) * 4;
    const shape = Math.max(0, Math.min(within / 3, deepestM - within / 400, (3000 - within) / 8));
    const depthM = shape > 3 ? shape + 0.6 * Math.sin(t / 45) + 0.1 * Math.sin(t * 12.9898) : shape;
    rows.push(`${t},${depthM.toFixed(1)}`);
  }
  return new TextEncoder().encode(`${rows.join('\n')}\n`);
}

function* piecesOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) yield bytes.subarray(at, at + PIECE_BYTES);
}

/** What an import of the file takes, from its bytes to a timeline, ms. */
export interface ImportTimes {
  readonly readMs: number;
  readonly checkMs: number;
  readonly simplifyMs: number;
  readonly timelineMs: number;
  readonly steps: number;
}

async function importMillion(file: Uint8Array): Promise<ImportTimes> {
  const start = performance.now();
  const guess = guessColumns(new TextDecoder().decode(file.subarray(0, PIECE_BYTES)));
  if (!guess.ok) throw new Error(guess.what);
  const read = await readCsv(textOfBytes(piecesOf(file)), guess.mapping);
  if (!read.ok) throw new Error(read.what);
  const afterRead = performance.now();
  read.recordings.forEach(checkRecord);
  const afterCheck = performance.now();
  const made = valueOf(diveFromRecords(read.recordings));
  const afterDive = performance.now();
  computeTimeline(made.dive, 10, { intervalEveryS: 60 });
  const end = performance.now();
  return {
    readMs: afterRead - start,
    checkMs: afterCheck - afterRead,
    simplifyMs: afterDive - afterCheck,
    timelineMs: end - afterDive,
    steps: made.dive.steps.length,
  };
}

let file: Uint8Array | undefined;

/** A million samples of CSV to a timeline. The file is made once, outside the time. */
export const import1m = {
  name: 'import-1m',
  prepare: () => void (file ??= millionSampleFile()),
  run: async () => {
    file ??= millionSampleFile();
    return importMillion(file);
  },
};
