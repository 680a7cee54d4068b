import type { ReactNode } from 'react';
import { CurveSample } from './plot/CurveKey';
import styles from './curves.module.css';

export interface CurveReading {
  id: string | number;
  name: string;
  /** Of the curve it is read from. */
  look?: number;
  value: string;
  note?: string;
  /** The button that asks why. */
  why: ReactNode;
}

/** What the curves say where they are read, one figure for each. */
export function CurveReadings({ label, readings }: { label: string; readings: readonly CurveReading[] }) {
  return (
    <ul className={styles.readings} aria-label={label}>
      {readings.map(({ id, name, look, value, note, why }) => (
        <li key={id}>
          <span>
            {look !== undefined && <CurveSample look={look} />}
            {name}
          </span>
          <b>{value}</b>
          {note && <small>{note}</small>}
          {why}
        </li>
      ))}
    </ul>
  );
}
