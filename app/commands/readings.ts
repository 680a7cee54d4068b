import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { parseScript } from '@/lib/dive/script';
import { readingsOf } from './readings-of';
import { readingsAsCsv, readingsAsText } from './print-readings';

const USAGE = 'readings: npm run --silent readings -- FILE [--every SECONDS] [--format json|csv|text]; FILE may be - for standard input';

/** Something the person must change; told in one line on standard error. */
class BadInput extends Error {}

function options() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { every: { type: 'string', default: '60' }, format: { type: 'string', default: 'json' } },
    });
    const [file] = positionals;
    if (file === undefined || positionals.length > 1) throw new BadInput(USAGE);
    const every = Number(values.every);
    if (!(every > 0) || !Number.isFinite(every)) throw new BadInput(`readings: --every takes a number of seconds above 0, not ${values.every}`);
    const { format } = values;
    if (format !== 'json' && format !== 'csv' && format !== 'text') throw new BadInput(`readings: --format takes json, csv or text, not ${format}`);
    return { file, every, format };
  } catch (error) {
    throw error instanceof BadInput ? error : new BadInput(USAGE);
  }
}

function textOf(file: string): string {
  try {
    return readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch {
    throw new BadInput(`${file}:1:1: the file cannot be read; check its name and that you may read it`);
  }
}

function run(): string {
  const { file, every, format } = options();
  const parsed = parseScript(textOf(file));
  if (!parsed.ok) {
    const [first] = parsed.errors;
    throw new BadInput(`${file}:${first!.line}:${first!.column}: ${first!.message} ${first!.mend}`);
  }
  const readings = readingsOf(parsed.dive, parsed.warnings, every);
  if (format === 'csv') return readingsAsCsv(readings);
  return format === 'text' ? readingsAsText(readings) : `${JSON.stringify(readings)}\n`;
}

try {
  process.stdout.write(run());
} catch (error) {
  if (!(error instanceof BadInput)) throw error;
  process.stderr.write(`${error.message.replace(/\s+/g, ' ')}\n`);
  process.exitCode = 2;
}
