'use client';

import { useMemo } from 'react';
import {
  printDeviation,
  printExactDepth,
  sayAllowance,
  sayExpected,
  saySettings,
  WATER_WORDS,
} from '@/lib/bench/bench-words';
import type { ChamberRun, Way } from '@/lib/bench/chamber-run';
import { depthDeviations, type DepthDeviation } from '@/lib/bench/deviations';
import { askedAt } from '@/lib/bench/other-figures';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { printClock } from '@/lib/quantity/duration';
import { printDepth } from '@/lib/quantity/depth';
import { printPressure } from '@/lib/quantity/pressure';
import { usePreferences } from '../parts/preferences';
import { useBench } from './bench-context';
import { ReadingBoxes } from './ReadingBoxes';
import styles from './bench.module.css';

const WAY_WORDS: Readonly<Record<Way, string>> = {
  down: 'pressure going in',
  up: 'pressure coming out',
  surface: 'at surface pressure',
};

/** The sheet: a row for each checkpoint with its gauge, a column for each unit with what it should show and room for what it did. */
export function SheetTable({ run, sheets }: { run: ChamberRun; sheets: readonly UnitSheet[] }) {
  const settings = useBench((state) => state.settings);
  const units = usePreferences((preferences) => preferences.units);
  const deviations = useMemo(
    () => sheets.map(({ expected, readings }) => depthDeviations(expected, readings, settings)),
    [sheets, settings],
  );
  return (
    <section aria-labelledby="sheet" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="sheet">The sheet</h2>
      <p className={styles.soft}>{saySettings(settings, units)}</p>
      {sheets.length === 0 && <p>Add a unit to be read.</p>}
      {sheets.length > 0 && (
        <div className={styles.across} role="region" aria-label="What each unit should show, and did" tabIndex={0}>
          <table className={styles.sheet}>
            <caption className="spoken">What each unit should show, and did</caption>
            <thead>
              <tr>
                <th scope="col">Read at</th>
                {sheets.map(({ unit }) => (
                  <th key={unit.id} scope="col">
                    {unit.name}
                    <span>
                      {WATER_WORDS[unit.water]}
                      {unit.mode === 'gauge' && ', gauge mode'}
                    </span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {run.checkpoints.map(({ name, way, gaugeM }, at) => {
                const one = sheets[0]!.expected[at]!;
                return (
                  <tr key={name}>
                    <th scope="row">
                      {name}
                      <strong>
                        Gauge {printDepth(one.gaugeM, units)}, {printPressure(one.gaugeBar, units)}
                      </strong>
                      <span>
                        at {printClock(one.timeS)}, {WAY_WORDS[way]}
                      </span>
                    </th>
                    {sheets.map(({ unit, expected, readings }, index) => (
                      <td key={unit.id}>
                        <div className={styles.entry} role="group" aria-label={`${unit.name} at ${name}`}>
                          <p>
                            should show <strong>{printExactDepth(expected[at]!.depthM, units)}</strong>
                            {sayExpected(expected[at]!, units).map((text) => (
                              <span key={text}>; {text}</span>
                            ))}
                          </p>
                          <ReadingBoxes
                            unit={unit}
                            checkpoint={name}
                            reading={readings[name] ?? {}}
                            asked={askedAt(expected[at]!)}
                            atSurface={gaugeM === 0}
                          />
                          <Standing deviation={deviations[index]![at]!} />
                        </div>
                      </td>
                    ))}
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function Standing({ deviation: { standing, deviationM, allowedM } }: { deviation: DepthDeviation }) {
  const units = usePreferences((preferences) => preferences.units);
  if (standing === 'not read') return null;
  if (standing === 'nothing shown') return <p className={styles.out}>✗ no depth reading</p>;
  const off = printDeviation(deviationM!, units);
  if (standing === 'not judged') return <p className={styles.deviation}>{off}</p>;
  return (
    <p className={standing === 'out' ? styles.out : styles.deviation}>
      {standing === 'out' ? '✗ out' : '✓ in'}, {off} of ±{sayAllowance(allowedM!, units)}
    </p>
  );
}
