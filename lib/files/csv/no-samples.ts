import { quoted, refused, type Refusal } from '../../quantity/parsed';
import { rises } from './column-numbers';
import type { CsvShape } from './csv-shape';
import { headingWords, readHeading } from './csv-words';

/** What a text is in which no rows of samples were found, by its first lines. */
export function noRows(head: string): Refusal {
  const lines = head.split(/\r\n|\r|\n/).map((text, i) => ({ text: text.trim(), row: i + 1 }));
  const [first] = lines.filter(({ text }) => text !== '');
  if (first && /^[[{]/.test(first.text))
    return refused('This looks like JSON, which is not read here.', 'Export the dive as UDDF or CSV instead.');
  const told = lines.filter(({ text }) => /\d/.test(text));
  const alone = told.filter(({ text }) => /^-?\d+([.,]\d+)?$/.test(text));
  if (alone.length > 2 && alone.length >= told.length - 3)
    return refused(
      `Each row holds one number alone, such as ${quoted(alone[0]!.text)} in row ${alone[0]!.row}: no time goes with a depth.`,
      'Export the time of each sample too, in a column beside its depth.',
    );
  const example = told[1] ?? told[0] ?? first;
  return refused(
    `No rows of numbers were found in this file${example ? `: row ${example.row} is ${quoted(example.text)}` : ''}.`,
    'Bring a CSV file with a row for each sample, such as “time_s,depth_m”, then “0,0.0” and so on. Times may be written as 170, 2:50 or 0:02:50.',
  );
}

/** Why rows of numbers are no samples of a dive, or cannot be told from one another; undefined where they may be. */
export function misfitOf(shape: CsvShape): Refusal | undefined {
  return commaForBoth(shape) ?? listOfDives(shape);
}

/** `10,1,5` for 10 s and 1.5 m under two headings: nobody can tell which comma is which. */
function commaForBoth(shape: CsvShape): Refusal | undefined {
  const named = shape.headings.filter((heading) => heading !== '').length;
  const extra = shape.separator === ',' && named > 0 && named < shape.headings.length;
  if (!extra || !shape.rows.every((row) => row.every((cell) => !cell.includes('.')))) return undefined;
  return refused(
    `The comma seems to part the columns and to mark decimals too: row ${shape.firstRow} has ${shape.headings.length} cells for ${named} headings.`,
    'Save the file with semicolons or tabs between the columns, or with decimal points.',
  );
}

const MOST_DEPTH =
  /\b(max\w*|deepest|grosste|profonde?ur max\w*)\b.*\b(depth|tiefe|prof\w*|diepte|djup|dybde)\b|\b(depth|tiefe|prof\w*|diepte|djup|dybde)\b.*\bmax\w*|maximaltiefe/;
const WHOLE_DIVE =
  /\b(date|datum|fecha|data|duration|dauer|duree|duracion|durata|bottom time|tauchzeit|site|location|ort|lieu|lugar)\b/;

/** A greatest depth and a length or a date in each row: a list of dives, with no profile in it. */
function listOfDives(shape: CsvShape): Refusal | undefined {
  const headings = shape.headings.map(headingWords);
  if (!headings.some((heading) => MOST_DEPTH.test(heading)) || !headings.some((heading) => WHOLE_DIVE.test(heading)))
    return undefined;
  const sampled = shape.headings.some((heading, i) => {
    const read = readHeading(heading);
    const cells = shape.rows.map((row) => (row[i] ?? '').trim());
    return read?.role === 'time' && read.sure === 1 && !WHOLE_DIVE.test(headings[i]!) && rises(cells, shape.decimal);
  });
  if (sampled && shape.rows.length > 1) return undefined;
  return refused(
    `This is a list of dives, one to a row (row ${shape.firstRow}: ${shape.rows[0]!.slice(0, 4).join(', ')}): it holds no depth at each moment.`,
    'Export the dives with their profiles: a row for each sample, with its time and its depth.',
  );
}
