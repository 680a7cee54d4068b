'use client';

import { useMemo } from 'react';
import { printDeviation, printExactDepth, sayAllowance, sayExpected, saySettings } from '@/lib/bench/bench-words';
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

/** The sheet: at each checkpoint the gauge, what each unit should show, and room for what it did. */
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
      <ol className={styles.checkpoints}>
        {run.checkpoints.map((checkpoint, at) => {
          const one = sheets[0]?.expected[at];
          return (
            <li key={checkpoint.name} className={styles.checkpoint}>
              <div className={styles.checkpointHead}>
                <h3>{checkpoint.name}</h3>
                {one && (
                  <p>
                    <strong>
                      Gauge {printDepth(one.gaugeM, units)}, {printPressure(one.gaugeBar, units)}
                    </strong>
                    <span className={styles.soft}>
                      at {printClock(one.timeS)}, {WAY_WORDS[checkpoint.way]}
                    </span>
                  </p>
                )}
              </div>
              <ul className={styles.entries}>
                {sheets.map(({ unit, expected, readings }, index) => (
                  <li key={unit.id}>
                    <div className={styles.entry} role="group" aria-label={`${unit.name} at ${checkpoint.name}`}>
                      <div>
                        <h4>{unit.name}</h4>
                        <p>
                          should show <strong>{printExactDepth(expected[at]!.depthM, units)}</strong>
                          {sayExpected(expected[at]!, units).map((text) => (
                            <span key={text}>; {text}</span>
                          ))}
                        </p>
                      </div>
                      <ReadingBoxes
                        unit={unit}
                        checkpoint={checkpoint.name}
                        reading={readings[checkpoint.name] ?? {}}
                        asked={askedAt(expected[at]!)}
                        atSurface={checkpoint.gaugeM === 0}
                      />
                      <Standing deviation={deviations[index]![at]!} />
                    </div>
                  </li>
                ))}
              </ul>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Standing({ deviation: { standing, deviationM, allowedM } }: { deviation: DepthDeviation }) {
  const units = usePreferences((preferences) => preferences.units);
  if (standing === 'not read') return <p className={styles.deviation} />;
  if (standing === 'nothing shown') return <p className={styles.out}>✗ no depth reading</p>;
  const off = printDeviation(deviationM!, units);
  if (standing === 'not judged') return <p className={styles.deviation}>{off}</p>;
  return (
    <p className={standing === 'out' ? styles.out : styles.deviation}>
      {standing === 'out' ? '✗ out' : '✓ in'}, {off} of ±{sayAllowance(allowedM!, units)}
    </p>
  );
}
