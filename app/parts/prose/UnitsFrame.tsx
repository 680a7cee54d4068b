'use client';

import type { ReactNode } from 'react';
import { usePreferences } from '../preferences';
import './units.css';

/** Around texts whose values stand in both systems of units: shows those the reader has chosen. */
export function UnitsFrame({ children }: { children: ReactNode }) {
  const units = usePreferences((state) => state.units);
  return <div data-units={units}>{children}</div>;
}
