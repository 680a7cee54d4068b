import { sameGas, type Gas } from '../../physics/gas';
import type { Refusal } from '../../quantity/parsed';
import { allNumbers, numbersOf, rises } from './column-numbers';
import { shapeOf, type CsvShape } from './csv-shape';
import {
  ROLE_WORDS,
  UNIT_WORDS,
  unitsOfRole,
  type ColumnUse,
  type CsvUnit,
  type Mapping,
  type Role,
} from './csv-mapping';
import { headingWords, readHeading, unitOfWord, type HeadingRead } from './csv-words';
import { guessUnit, type UnitGuess } from './guess-unit';
import { misfitOf, noRows } from './no-samples';
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
  if (!shape) return noRows(head);
  const misfit = misfitOf(shape);
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
  const [about, which = ''] = question.id.split(/:(.*)/s);
  if (about === 'decimal') return { ...mapping, decimal: value === ',' ? ',' : '.' };
  if (about === 'unit') {
    return which
      .split(',')
      .reduce(
        (changed, index) => changeColumn(changed, Number(index), ({ role }) => ({ role, unit: value as CsvUnit })),
        mapping,
      );
  }
  if (about === 'use') {
    const [index, unit] = which.split(/,(.*)/s);
    const use: ColumnUse =
      value === 'ignored' ? { role: 'ignored', unit: 'none' } : { role: value as Role, unit: unit as CsvUnit };
    return changeColumn(mapping, Number(index), () => use);
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

const GAS_LINE =
  /^["\s]*(?:breathing )?(?:gas|mix|gas mix|gasgemisch|atemgas|gaz|melange|mélange|mezcla|miscela|gasmengsel)\s*(?:#?\s*\d{1,2}\s*[:=]|[:=]?)\s+(.+)$/i;

/** Gases named in lines above the samples, such as `Gas:,EAN32` or `Gas 2: EAN50`, each once. */
function gasAbove({ above }: CsvShape): Mapping['gasAbove'] {
  const rows: number[] = [];
  const gases: Gas[] = [];
  for (const { row, cells } of above) {
    const gas = recordedGas(GAS_LINE.exec(cells.join(' ').trim())?.[1] ?? '');
    if (!gas || gases.some((other) => sameGas(other, gas))) continue;
    rows.push(row);
    gases.push(gas);
  }
  return gases.length > 0 ? { rows, gases } : undefined;
}

/** Meanings of which a wrong one would go unseen into the dive or the search. */
const ASKED_FOR: readonly Role[] = ['gas', 'oxygen', 'helium', 'noStop', 'ceiling', 'stopDepth', 'stopTime'];
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
  const read = shape.headings.map((heading, i) =>
    asMeasured(readHeading(heading), cells[i]!, shape.decimal, shape.cellUnits[i] === '%'),
  );
  // A column that stands still is no time, whatever its heading says, where another of that name goes on.
  const moving = read.map((heading, i) => heading?.role !== 'time' || rises(cells[i]!, shape.decimal));
  const contested = read.filter((heading, i) => heading?.role === 'time' && moving[i]).length > 0;
  const meant = read.map((heading, i) => (contested && !moving[i] ? undefined : heading));
  const roles = meant.map((heading, i): Role => (heading && isSurest(meant, i) ? heading.role : 'ignored'));
  const claim = (role: Role, fits: (column: readonly string[], index: number) => boolean) => {
    const index = roles.includes(role) ? -1 : cells.findIndex((column, i) => roles[i] === 'ignored' && fits(column, i));
    if (index >= 0) roles[index] = role;
  };
  claim('time', (column) => rises(column, shape.decimal));
  claim(
    'depth',
    (column, i) => allNumbers(column, shape.decimal) && !OTHER_MEASURE.test(headingWords(shape.headings[i]!)),
  );
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
    const strange = own === undefined ? strangeUnit(shape.headings[i]!) : undefined;
    return {
      name: shape.headings[i] || `column ${i + 1}`,
      examples: cells[i]!.slice(0, 3),
      role,
      unit: guessed.unit,
      confidence: sure * guessed.sure,
      guessed:
        strange === undefined
          ? guessed
          : {
              ...guessed,
              why: `Its heading says “${strange}”, which is no unit of ${ROLE_WORDS[role]} that is read here.`,
            },
      named: sure >= ASKED_BELOW,
      followsDepth,
    };
  });
}

/** Headings of what a bare column of numbers beside a time may be instead of a depth. */
const OTHER_MEASURE =
  /\b(pressure|bar|mbar|psi|temp\w*|speed|rate|heart|pulse|battery|voltage|heading|compass|index|druck|herz\w*|batterie)\b/;

/** A column of gases that holds bare numbers tells percent or fractions of oxygen; of small whole ones nobody knows. */
function asMeasured(
  read: HeadingRead | undefined,
  cells: readonly string[],
  decimal: '.' | ',',
  inPercent: boolean,
): HeadingRead | undefined {
  if (read?.role !== 'gas' || !allNumbers(cells, decimal)) return read;
  const numbers = numbersOf(cells, decimal);
  const isOxygen =
    numbers.every((value) => value >= 5 && value <= 100) || numbers.every((value) => value > 0.04 && value < 1);
  return isOxygen ? { ...read, role: 'oxygen', sure: inPercent ? read.sure : 0.5 } : read;
}

/** The unit a heading names in brackets, where it is none that is known. */
function strangeUnit(heading: string): string | undefined {
  const named = /[([{]([^)\]}]{1,20})[)\]}]\s*$/.exec(heading)?.[1]?.trim();
  return named === undefined || named === '' || unitOfWord(named) !== undefined ? undefined : named;
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
  const units = [read[index]?.unit, unitOfWord(shape.unitRow?.[index] ?? ''), shape.cellUnits[index]];
  return units.find((unit) => unit !== undefined && unitsOfRole(role).includes(unit));
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
      guess: String(
        index >= 0
          ? index
          : Math.max(
              0,
              columns.findIndex((column) => column.role === 'ignored'),
            ),
      ),
    });
  }
  columns.forEach(({ name, role, unit, named }, i) => {
    if (named || !ASKED_FOR.includes(role)) return;
    questions.push({
      id: `use:${i},${unit}`,
      ask: `Does “${name}” hold the ${ROLE_WORDS[role]}?`,
      why: 'Its heading does not say so for certain.',
      choices: [
        { value: role, label: `yes, the ${ROLE_WORDS[role]}` },
        { value: 'ignored', label: 'no: leave it out' },
      ],
      guess: role,
    });
  });
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
