import { act, within } from '@testing-library/react';
import { usePreferences } from '@/app/parts/preferences';
import type { UnitSystem } from '@/lib/quantity/unit-system';

export const SYSTEMS: readonly UnitSystem[] = ['metric', 'imperial'];
export const inUnits = (units: UnitSystem) => act(() => usePreferences.getState().setUnits(units));

/** The cells of a table, row by row, as they are read. */
export const rowsOf = (table: HTMLElement): string[][] =>
  within(table)
    .getAllByRole('row')
    .slice(1)
    .map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent ?? ''));
