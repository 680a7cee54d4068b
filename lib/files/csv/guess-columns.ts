import { refused, type Refusal } from '../../quantity/parsed';
import { isClock, isDated, shapeOf, type CsvShape } from './csv-shape';
import { UNIT_WORDS, unitsOfRole, type ColumnUse, type CsvUnit, type Mapping, type Role } from './csv-mapping';
import { readHeading, unitOfWord, type HeadingRead } from './csv-words';
import { numberBetween } from './csv-cells';
import { guessUnit, type UnitGuess } from './guess-unit';
import { recordedGas } from './recorded-gas';

/** A column of the file as it was understood. */
export interface GuessedColumn {
  /** Its heading, or `column 3` where it has none. */
  readonly name: string;
  /** The first few of its cells. */
  readonly examples: readonly string[];
  readonly role: Role;
  readonly unit: CsvUnit;
  /** How sure the meaning and the unit are, 0–1. */
  readonly confidence: number;
}

/** What only a person can tell. The guess is one of the choices. */
export interface Question {
  readonly id: string;
  readonly ask: string;
  /** Why it is asked. */
  readonly why: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly guess: string;
}

export interface Guess {
  readonly ok: true;
  readonly mapping: Mapping;
  readonly columns: readonly GuessedColumn[];
  /** Empty when the file itself leaves nothing open. */
  readonly questions: readonly Question[];
  /** The first rows of samples, as text. */
  readonly rows: readonly (readonly string[])[];
}

const ROWS_SHOWN = 5;

/**
 * Guesses how to read a CSV file from its beginning, and says what has to be asked.
 * @param head the first lines; the last one is taken as cut off unless `whole`
 */
export function guessColumns(head: string, whole = false): Guess | Refusal {
  const shape = shapeOf(head, whole);
  if (!shape) {
    return refused(
      'No rows of numbers were found in this file.',
      'Bring a CSV file with a row for each sample, such as “time_s,depth_m”, then “0,0.0” and so on.',
    );
  }
  const misfit = commaForBoth(shape) ?? listOfDives(shape);
  if (misfit) return misfit;
  const columns = columnsOf(shape);
  const mapping: Mapping = {
    separator: shape.separator,
    decimal: shape.decimal,
    firstRow: shape.firstRow,
    columns: columns.map(({ role, unit }) => ({ role, unit })),
    gasAbove: gasAbove(shape),
  };
  const shown = columns.map(({ name, examples, role, unit, confidence }) => ({
    name,
    examples,
    role,
    unit,
    confidence,
  }));
  return {
    ok: true,
    mapping,
    columns: shown,
    questions: questionsOf(shape, columns),
    rows: shape.rows.slice(0, ROWS_SHOWN),
  };
}

/** A mapping after one question has been answered. An answer that is not among the choices changes nothing. */
export function answerQuestion(mapping: Mapping, question: Question, value: string): Mapping {
  if (!question.choices.some((choice) => choice.value === value)) return mapping;
  const [about, which = ''] = question.id.split(':');
  if (about === 'decimal') return { ...mapping, decimal: value === ',' ? ',' : '.' };
  if (about === 'unit') {
    return which
      .split(',')
      .reduce(
        (changed, index) => changeColumn(changed, Number(index), ({ role }) => ({ role, unit: value as CsvUnit })),
        mapping,
      );
  }
  const role = which as Role;
  const from = mapping.columns.findIndex((use) => use.role === role);
  const unit = from >= 0 ? mapping.columns[from]!.unit : unitsOfRole(role)[0]!;
  const without = from >= 0 ? changeColumn(mapping, from, () => ({ role: 'ignored', unit: 'none' })) : mapping;
  return changeColumn(without, Number(value), () => ({ role, unit }));
}

function changeColumn(mapping: Mapping, index: number, change: (use: ColumnUse) => ColumnUse): Mapping {
  return { ...mapping, columns: mapping.columns.map((use, i) => (i === index ? change(use) : use)) };
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
  const headings = shape.headings.map((heading) =>
    heading
      .toLowerCase()
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '')
      .replace(/[_-]/g, ' '),
  );
  if (!headings.some((heading) => MOST_DEPTH.test(heading)) || !headings.some((heading) => WHOLE_DIVE.test(heading)))
    return undefined;
  const cells = shape.headings.map((_, i) => shape.rows.map((row) => (row[i] ?? '').trim()));
  const sampled = shape.headings.some((heading, i) => {
    const read = readHeading(heading);
    return (
      read?.role === 'time' && read.sure === 1 && !WHOLE_DIVE.test(headings[i]!) && rises(cells[i]!, shape.decimal)
    );
  });
  if (sampled && shape.rows.length > 1) return undefined;
  return refused(
    `This is a list of dives, one to a row (row ${shape.firstRow}: ${shape.rows[0]!.slice(0, 4).join(', ')}): it holds no depth at each moment.`,
    'Export the dives with their profiles: a row for each sample, with its time and its depth.',
  );
}

/** A gas named in a line above the samples, such as `Gas:,EAN32`. */
function gasAbove({ above }: CsvShape): Mapping['gasAbove'] {
  for (const { row, cells } of above) {
    const line = cells.join(' ').trim();
    const named =
      /^["\s]*(?:breathing )?(gas|mix|gas mix|gasgemisch|atemgas|gaz|melange|mélange|mezcla|miscela|gasmengsel)\s*[:=]?\s+(.+)$/i.exec(
        line,
      );
    const gas = named && recordedGas(named[2]!);
    if (gas) return { row, gas };
  }
  return undefined;
}

/** A meaning or unit surer than this is taken without asking. */
const ASKED_BELOW = 0.7;

/** A guessed column with what its questions need. */
interface Column extends GuessedColumn {
  readonly guessed: UnitGuess;
  /** Whether its own heading names its meaning for certain. */
  readonly named: boolean;
  /** Takes the unit of the depth column, having none of its own. */
  readonly followsDepth: boolean;
}

function columnsOf(shape: CsvShape): Column[] {
  const cells = shape.headings.map((_, i) => shape.rows.map((row) => (row[i] ?? '').trim()));
  const read = shape.headings.map(readHeading);
  // A column that stands still is no time, whatever its heading says, where another of that name goes on.
  const moving = read.map((heading, i) => heading?.role !== 'time' || rises(cells[i]!, shape.decimal));
  const contested = read.filter((heading, i) => heading?.role === 'time' && moving[i]).length > 0;
  const meant = read.map((heading, i) => (contested && !moving[i] ? undefined : heading));
  const roles = meant.map((heading, i): Role => (heading && isSurest(meant, i) ? heading.role : 'ignored'));
  const claim = (role: Role, fits: (column: readonly string[]) => boolean) => {
    const index = roles.includes(role) ? -1 : cells.findIndex((column, i) => roles[i] === 'ignored' && fits(column));
    if (index >= 0) roles[index] = role;
  };
  claim('time', (column) => rises(column, shape.decimal));
  claim('depth', (column) => allNumbers(column, shape.decimal));
  const metric = read.some((heading) => heading?.metric);
  const depth = roles.indexOf('depth');
  const depthTold = depth < 0 ? undefined : toldUnit(shape, read, depth, 'depth');
  return roles.map((role, i) => {
    const own = toldUnit(shape, read, i, role);
    const followsDepth = (role === 'ceiling' || role === 'stopDepth') && own === undefined && depth >= 0;
    const guessed = followsDepth
      ? guessUnit('depth', depthTold, cells[depth]!, metric)
      : guessUnit(role, own, cells[i]!, metric);
    const sure = read[i]?.role === role ? read[i].sure : role === 'ignored' ? 1 : 0.4;
    return {
      name: shape.headings[i] || `column ${i + 1}`,
      examples: cells[i]!.slice(0, 3),
      role,
      unit: guessed.unit,
      confidence: sure * guessed.sure,
      guessed,
      named: sure >= ASKED_BELOW,
      followsDepth,
    };
  });
}

/** Whether a heading is the one to take among those of its meaning: the surest, and of these the first. */
function isSurest(read: readonly (HeadingRead | undefined)[], index: number): boolean {
  const own = read[index]!;
  return read.every(
    (other, i) =>
      other?.role !== own.role || i === index || other.sure < own.sure || (other.sure === own.sure && i > index),
  );
}

/** The unit a heading, or the row of units under it, gives for the meaning of its column. */
function toldUnit(
  shape: CsvShape,
  read: readonly (HeadingRead | undefined)[],
  index: number,
  role: Role,
): CsvUnit | undefined {
  const units = [read[index]?.unit, unitOfWord(shape.unitRow?.[index] ?? '')];
  return units.find((unit) => unit !== undefined && unitsOfRole(role).includes(unit));
}

function numbersOf(column: readonly string[], decimal: '.' | ','): number[] {
  return column.filter((cell) => cell !== '').map((cell) => numberBetween(cell, 0, cell.length, decimal.charCodeAt(0)));
}

function rises(column: readonly string[], decimal: '.' | ','): boolean {
  const told = column.filter((cell) => cell !== '');
  if (told.length > 0 && told.every((cell) => isClock(cell) || isDated(cell)))
    return told.length === 1 || told.some((cell) => cell !== told[0]);
  const numbers = numbersOf(column, decimal);
  return (
    numbers.length > 1 &&
    numbers.every((value, i) => Number.isFinite(value) && (i === 0 || value >= numbers[i - 1]!)) &&
    numbers.at(-1)! > numbers[0]!
  );
}

function allNumbers(column: readonly string[], decimal: '.' | ','): boolean {
  const numbers = numbersOf(column, decimal);
  return numbers.length > 0 && numbers.every(Number.isFinite);
}

function questionsOf(shape: CsvShape, columns: readonly Column[]): Question[] {
  const questions: Question[] = [];
  if (!shape.decimalSure) {
    questions.push({
      id: 'decimal',
      ask: 'Which mark parts the whole number from its decimals?',
      why: 'The numbers could be read either way.',
      choices: [
        { value: '.', label: 'a point: 12.5' },
        { value: ',', label: 'a comma: 12,5' },
      ],
      guess: shape.decimal,
    });
  }
  for (const role of ['time', 'depth'] as const) {
    const index = columns.findIndex((column) => column.role === role);
    if (columns[index]?.named) continue;
    questions.push({
      id: `column:${role}`,
      ask: `Which column holds the ${role}?`,
      why: index < 0 ? 'No heading names it.' : 'No heading names it for certain; the guess is from its numbers.',
      choices: columns.map(({ name, examples }, i) => ({
        value: String(i),
        label: `${name} (${examples.join(', ')}, …)`,
      })),
      guess: String(Math.max(0, index)),
    });
  }
  columns.forEach(({ name, role, unit, guessed, followsDepth }, i) => {
    if (role === 'ignored' || followsDepth || guessed.sure >= ASKED_BELOW) return;
    const followers = role === 'depth' ? columns.flatMap((column, other) => (column.followsDepth ? [other] : [])) : [];
    questions.push({
      id: `unit:${[i, ...followers].join(',')}`,
      ask: `What is “${name}” in?`,
      why: guessed.why,
      choices: guessed.possible.map((possible) => ({ value: possible, label: UNIT_WORDS[possible] })),
      guess: unit,
    });
  });
  return questions;
}
