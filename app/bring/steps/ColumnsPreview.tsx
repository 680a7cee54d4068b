'use client';

import { ROLE_WORDS, UNIT_WORDS, unitsOfRole, type ColumnUse, type Role } from '@/lib/files/csv/csv-mapping';
import type { PreviewCell } from '@/lib/files/csv/preview-rows';
import { gasName } from '@/lib/physics/gas';
import { printDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { fixed } from '@/lib/quantity/number';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { usePreferences } from '../../parts/preferences';
import { useBring } from '../bring-context';
import shared from '../bring.module.css';
import styles from './columns.module.css';

/** The first rows of the file, each cell as it is written and as it will be read; a column is chosen by a press on its head. */
export function ColumnsPreview({
  names,
  columns,
  chosen,
  onChoose,
}: {
  names: readonly string[];
  columns: readonly ColumnUse[];
  chosen: number;
  onChoose: (column: number) => void;
}) {
  const preview = useBring((state) => state.preview);
  const units = usePreferences((preferences) => preferences.units);
  return (
    <>
      {preview && !preview.ok && (
        <p className={shared.trouble} role="alert">
          <strong>{preview.what}</strong> {preview.mend}
        </p>
      )}
      <div className={styles.rows} tabIndex={0} role="region" aria-label="First rows as they will be read">
        <table>
          <thead>
            <tr>
              <th scope="col">Row</th>
              {names.map((name, index) => (
                <th key={index} scope="col" data-chosen={index === chosen}>
                  <button type="button" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
                    <strong>{name}</strong>
                    <span>{sayUse(columns[index]!)}</span>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {preview?.ok &&
              preview.rows.map(({ row, cells }) => (
                <tr key={row}>
                  <th scope="row">{row}</th>
                  {cells.map((cell, index) => (
                    <td key={index} data-chosen={index === chosen} data-left-out={columns[index]!.role === 'ignored'}>
                      <span className={styles.written}>{cell.text}</span>
                      {columns[index]!.role !== 'ignored' && <span>{sayCell(columns[index]!.role, cell, units)}</span>}
                    </td>
                  ))}
                </tr>
              ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function sayUse({ role, unit }: ColumnUse): string {
  if (role === 'ignored') return 'left out';
  return unitsOfRole(role).length > 1
    ? `${ROLE_WORDS[role]}, ${UNIT_WORDS[unit].replace(/ \(.*\)$/, '')}`
    : ROLE_WORDS[role];
}

/** What a cell is read as; an empty one that need not be filled is silent. */
function sayCell(role: Role, { text, read }: PreviewCell, units: UnitSystem): string {
  if (read === undefined) return text.trim() === '' ? '' : 'not read';
  if (typeof read === 'string') return read;
  if (typeof read === 'object') return gasName(read);
  switch (role) {
    case 'time':
    case 'noStop':
    case 'stopTime':
      return printClock(read);
    case 'temperature':
      return `${fixed(units === 'metric' ? read : read * 1.8 + 32, 1)} °${units === 'metric' ? 'C' : 'F'}`;
    default:
      return printDepth(read, units);
  }
}
