import { numberBetween } from './csv-cells';
import { isClock, isDated } from './csv-shape';

/** The numbers of a column; NaN for a cell that is none. Empty cells are passed over. */
export function numbersOf(column: readonly string[], decimal: '.' | ','): number[] {
  return column.filter((cell) => cell !== '').map((cell) => numberBetween(cell, 0, cell.length, decimal.charCodeAt(0)));
}

/** Whether a column goes on from row to row as a time does. */
export function rises(column: readonly string[], decimal: '.' | ','): boolean {
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

/** Whether a column has a number in it, and nothing else. */
export function allNumbers(column: readonly string[], decimal: '.' | ','): boolean {
  const numbers = numbersOf(column, decimal);
  return numbers.length > 0 && numbers.every(Number.isFinite);
}
