'use client';

import { useEffect, useState } from 'react';
import { readyRunOf, readyRuns, runScript } from '@/content/bench/runs';
import { Button } from '../parts/Button';
import { usePreferences } from '../parts/preferences';
import { fetchedLater } from '../parts/fetched-later';
import { useBench } from './bench-context';
import styles from './bench.module.css';

const RunFaults = fetchedLater(async () => (await import('./after-opening')).RunFaults);
const TooFast = fetchedLater(async () => (await import('./after-opening')).TooFast);

/** The run as a script, or one of the ready ones. It is written in before the reader of scripts is there. */
export function RunForm() {
  const script = useBench((state) => state.script);
  const change = useBench((state) => state.change);
  const units = usePreferences((preferences) => preferences.units);
  const untouched = useBench((state) => state.past.length === 0);
  const chosen = readyRunOf(script);
  // A ready run that nobody has touched follows the units.
  useEffect(() => {
    if (untouched && chosen && runScript(chosen, units) !== script) change({ script: runScript(chosen, units) });
  }, [untouched, chosen, units, script, change]);
  const [faulty, setFaulty] = useState(false);
  return (
    <section aria-labelledby="run" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="run">The run</h2>
      <div className={styles.row}>
        {readyRuns.map((ready) => (
          <Button
            key={ready.id}
            title={ready.shows}
            aria-pressed={ready === chosen}
            onClick={() => change({ script: runScript(ready, units), marks: [] })}
          >
            {ready.title}
          </Button>
        ))}
      </div>
      <div className={styles.script}>
        <label htmlFor="run-script">
          The run as a script. Depths are what the reference gauge shows; “# check: NAME” after a step has the units
          read at its end.
        </label>
        <textarea
          id="run-script"
          rows={12}
          spellCheck={false}
          value={script}
          aria-invalid={faulty ? true : undefined}
          aria-describedby={faulty ? 'run-errors' : undefined}
          onChange={(event) => change({ script: event.target.value, marks: [] }, 'typing the run')}
        />
        <RunFaults onFaulty={setFaulty} />
      </div>
      <TooFast />
    </section>
  );
}
