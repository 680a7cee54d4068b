import type { TableColumn } from '../DataTable';
import { printClock } from '@/lib/quantity/duration';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { atMost, fixed, sixFigures } from '@/lib/quantity/number';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { UNIT_NAMES, type PrintQuantity } from '@/lib/working/formula';
import type { Quantity, Unit, WorkingTable } from '@/lib/working/working';
import { capital } from '@/lib/quantity/capital';

interface Shown {
  /** How much of the model's unit one of the shown unit is. */
  readonly size: number;
  readonly name: string;
}

const IMPERIAL: Partial<Record<Unit, Shown>> = {
  m: { size: METRES_PER_FOOT, name: 'ft' },
  'm/min': { size: METRES_PER_FOOT, name: 'ft/min' },
  bar: { size: BAR_PER_PSI, name: 'psi' },
  'bar/m': { size: BAR_PER_PSI / METRES_PER_FOOT, name: 'psi/ft' },
  'bar/min': { size: BAR_PER_PSI, name: 'psi/min' },
  '1/bar': { size: 1 / BAR_PER_PSI, name: 'per psi' },
  'bar·L/(mol·K)': { size: BAR_PER_PSI, name: 'psi·L/(mol·K)' },
};

/** The unit a person reads a quantity in. All of a formula is converted alike, so that it holds in either system. */
export function shownUnit(unit: Unit, system: UnitSystem): Shown {
  return (system === 'imperial' ? IMPERIAL[unit] : undefined) ?? { size: 1, name: UNIT_NAMES[unit] ?? unit };
}

/** Quantities as they stand in a formula: six figures, so that the sum can be followed by hand. */
export function formulaPrinter(system: UnitSystem): PrintQuantity {
  return ({ value, unit }) => {
    const { size, name } = shownUnit(unit, system);
    const shown = value / size;
    return {
      number: sixFigures(shown),
      unit: name,
    };
  };
}

export function sayInFormula(quantity: Quantity, system: UnitSystem): string {
  const { number, unit } = formulaPrinter(system)(quantity);
  return [number.replace('Infinity', '∞'), unit].filter(Boolean).join(' ');
}

const DECIMALS: Record<UnitSystem, Partial<Record<Unit, number>>> = {
  metric: { bar: 3, m: 2, min: 2, h: 2, 'm/min': 1, 'g/L': 2, units: 1 },
  imperial: { bar: 2, m: 1, min: 2, h: 2, 'm/min': 0, 'g/L': 2, units: 1 },
};

/** What a working comes to, as a person reads it: `14.63 min`, `84.3%`, `no end`. */
export function sayAnswer({ value, unit }: Quantity, system: UnitSystem): string {
  if (Number.isNaN(value)) return 'no answer';
  if (value === Infinity) return unit === 'm' ? 'no depth at all' : 'no end';
  if (unit === '') return `${atMost(value * 100, 1)}%`;
  if (unit === 's') return `${printClock(value)} min:s`;
  const { size, name } = shownUnit(unit, system);
  return `${atMost(value / size, DECIMALS[system][unit] ?? 3)} ${name}`;
}

/** How many decimals of a pressure tell enough of it in a sentence. */
const BAR_DECIMALS: Record<UnitSystem, number> = { metric: 2, imperial: 1 };

/** A figure that decides an answer, in the sentence that opens its working: `2.64 bar`. */
export function sayDeciding(quantity: Quantity, system: UnitSystem): string {
  if (quantity.unit !== 'bar' || !Number.isFinite(quantity.value)) return sayAnswer(quantity, system);
  const { size, name } = shownUnit('bar', system);
  return `${fixed(quantity.value / size, BAR_DECIMALS[system])} ${name}`;
}

/** The columns of a working's table, with its numbers in the units a person reads. */
export function tableColumns(
  { columns, marked, rows }: WorkingTable,
  system: UnitSystem,
  markedBecause: string,
): TableColumn<WorkingTable['rows'][number]>[] {
  return columns.map(({ title, unit }, index) => {
    const numbers = rows.map((row) => row[index]!).filter((value) => typeof value === 'number');
    const decimals = Math.max(0, ...numbers.map((value) => decimalsOf(value, unit, system)));
    const named = unit === '' ? title : `${title}, ${unit === 's' ? 'min:s' : shownUnit(unit, system).name}`;
    return {
      heading: capital(named),
      numeric: numbers.length > 0,
      cell: (row) => {
        const text = cellText(row[index]!, unit, system, decimals);
        return index === 0 && marked !== undefined && row === rows[marked] ? `${text} ◂ ${markedBecause}` : text;
      },
    };
  });
}

/** Decimals that say all a cell has to say of a number; a column gives all its numbers as many, so that they line up. */
function decimalsOf(value: number, unit: Unit, system: UnitSystem): number {
  if (!Number.isFinite(value) || unit === 's') return 0;
  const { size } = shownUnit(unit, system);
  const [, digits = ''] = atMost(value / size, unit === 'min' || unit === 'm' ? 1 : 3).split('.');
  return digits.length;
}

function cellText(value: number | string, unit: Unit, system: UnitSystem, decimals: number): string {
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) return 'no end';
  if (unit === 's') return printClock(value);
  return fixed(value / shownUnit(unit, system).size, decimals);
}
