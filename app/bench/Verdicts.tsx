'use client';

import { printDeviation, WATER_WORDS } from '@/lib/bench/bench-words';
import { depthDeviations, driftOf, hysteresisOf } from '@/lib/bench/deviations';
import { verdictOf, type Ruling } from '@/lib/bench/verdict';
import { TOLERANCE_SOURCE } from '@/lib/bench/tolerance-source';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { gasName } from '@/lib/physics/gas';
import { printClock } from '@/lib/quantity/duration';
import { sayDepth } from '@/lib/quantity/depth';
import { usePreferences } from '../parts/preferences';
import { useBench } from './bench-context';
import styles from './bench.module.css';

const MARKS: Readonly<Record<Ruling, string>> = {
  stop: '■',
  faulty: '!',
  out: '✗',
  unread: '…',
  unjudged: '?',
  odd: '≠',
  in: '✓',
};

/** What the readings of each unit come to, with the reasons. */
export function Verdicts({ sheets }: { sheets: readonly UnitSheet[] }) {
  return (
    <section aria-labelledby="verdicts" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="verdicts">Unit by unit</h2>
      <div className={styles.verdicts}>
        {sheets.map((sheet) => (
          <UnitVerdict key={sheet.unit.id} sheet={sheet} />
        ))}
      </div>
      <p className={styles.soft}>{TOLERANCE_SOURCE}</p>
    </section>
  );
}

function UnitVerdict({ sheet: { unit, expected, readings } }: { sheet: UnitSheet }) {
  const settings = useBench((state) => state.settings);
  const units = usePreferences((preferences) => preferences.units);
  const { ruling, headline, reasons } = verdictOf(unit, expected, readings, settings, units);
  const deviations = depthDeviations(expected, readings, settings);
  const pairs = hysteresisOf(deviations);
  const drifts = driftOf(deviations);
  return (
    <article aria-labelledby={`verdict-${unit.id}`} className={ruling === 'stop' ? styles.verdictStop : styles.verdict}>
      <h3 id={`verdict-${unit.id}`}>{unit.name}</h3>
      <p className={styles.soft}>
        Set to {WATER_WORDS[unit.water]}
        {unit.gas ? `, ${gasName(unit.gas)}` : ''}
        {unit.mode === 'gauge' ? ', gauge mode' : ''}
      </p>
      <p className={styles.headline}>
        <span aria-hidden="true">{MARKS[ruling]}</span> {headline}
      </p>
      {reasons.length > 0 && (
        <ul>
          {reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      {pairs.length > 0 && (
        <p>
          Out against in:{' '}
          {pairs
            .map(({ gaugeM, differenceM }) => `${printDeviation(differenceM, units)} at ${sayDepth(gaugeM, units)}`)
            .join(', ')}
          .
        </p>
      )}
      {drifts.length > 0 && (
        <p>
          Drift in a hold:{' '}
          {drifts
            .map(
              ({ gaugeM, driftM, overS }) =>
                `${printDeviation(driftM, units)} in ${printClock(overS)} at ${sayDepth(gaugeM, units)}`,
            )
            .join(', ')}
          .
        </p>
      )}
    </article>
  );
}
