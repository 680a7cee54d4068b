import Papa from 'papaparse';
import type { ResultRow } from './results';

/** The results of a class as CSV, under the caution. What a spreadsheet would take for a formula is put in quotes as text. */
export function resultsCsv(rows: readonly ResultRow[], caution: string): string {
  return `${Papa.unparse(
    [
      [`# ${caution}`],
      ['question', 'round', 'answered', 'right', 'answers'],
      ...rows.map(({ question, round, answered, right, answers }) => [question, round, answered, right ?? '', answers]),
    ],
    { escapeFormulae: true, newline: '\n' },
  )}\n`;
}
