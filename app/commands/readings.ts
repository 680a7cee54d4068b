import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { BadInput } from './bad-input';
import { diveOfFile } from './readings/dive-of-file';
import { readingsOf } from './readings/readings-of';
import { TARGETS } from '@/lib/ways-out/trouble';
import { waysOutReadings } from './readings/ways-out-readings';
import { readingsAsCsv, readingsAsText } from './readings/print-readings';

const USAGE =
  'readings: npm run --silent readings -- FILE [--every SECONDS] [--format json|csv|text] [--avoid stop|ceiling|slow-down] [--repair]; FILE is a script, or a record in UDDF or CSV, and may be - for standard input; --avoid tells what would have avoided it, each change worked out anew as a whole dive, or how much more it would have taken; --repair agrees to every repair of a record';

/** Finer samples say nothing new, and there would be no room for those of a week. */
const FINEST_S = 0.1;

function options() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        every: { type: 'string', default: '60' },
        format: { type: 'string', default: 'json' },
        avoid: { type: 'string' },
        repair: { type: 'boolean', default: false },
      },
    });
    const [file] = positionals;
    if (file === undefined || positionals.length > 1) throw new BadInput(USAGE);
    const every = Number(values.every);
    if (!(every >= FINEST_S) || !Number.isFinite(every))
      throw new BadInput(`readings: --every takes a number of seconds from ${FINEST_S} on, not ${values.every}`);
    const { format } = values;
    if (format !== 'json' && format !== 'csv' && format !== 'text')
      throw new BadInput(`readings: --format takes json, csv or text, not ${format}`);
    const avoid = TARGETS.find((target) => target === values.avoid);
    if (values.avoid !== undefined && !avoid)
      throw new BadInput(`readings: --avoid takes ${TARGETS.join(', ')}, not ${values.avoid}`);
    return { file, every, format, avoid, repair: values.repair };
  } catch (error) {
    throw error instanceof BadInput ? error : new BadInput(USAGE);
  }
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file === '-' ? 0 : file);
  } catch {
    throw new BadInput(`${file}:1:1: the file cannot be read; check its name and that you may read it`);
  }
}

async function run(): Promise<string> {
  const { file, every, format, avoid, repair } = options();
  const { dive, warnings } = await diveOfFile(file, bytesOf(file), repair);
  const readings = { ...readingsOf(dive, warnings, every), ...(avoid && waysOutReadings(dive, avoid)) };
  if (format === 'csv') return readingsAsCsv(readings);
  return format === 'text' ? readingsAsText(readings) : `${JSON.stringify(readings)}\n`;
}

try {
  process.stdout.write(await run());
} catch (error) {
  if (!(error instanceof BadInput)) throw error;
  process.stderr.write(`${error.message.replace(/\s+/g, ' ')}\n`);
  process.exitCode = 2;
}
