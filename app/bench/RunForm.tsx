'use client';

import { useEffect } from 'react';
import { readyRunOf, readyRuns, runScript } from '@/content/bench/runs';
import { fasterThanStated } from '@/lib/bench/chamber-dive';
import type { RunRead } from '@/lib/bench/chamber-run';
import { sayDepth } from '@/lib/quantity/depth';
import { printRate, printRateLimit } from '@/lib/quantity/rate';
import { Button } from '../parts/Button';
import { usePreferences } from '../parts/preferences';
import { useSaidOncePaused } from '../parts/said-once-paused';
import { useBench } from './bench-context';
import styles from './bench.module.css';

/** The run as a script, or one of the ready ones. */
export function RunForm({ read }: { read: RunRead }) {
  const script = useBench((state) => state.script);
  const settings = useBench((state) => state.settings);
  const change = useBench((state) => state.change);
  const units = usePreferences((preferences) => preferences.units);
  const untouched = useBench((state) => state.past.length === 0);
  const chosen = readyRunOf(script);
  // A ready run that nobody has touched follows the units.
  useEffect(() => {
    if (untouched && chosen && runScript(chosen, units) !== script) change({ script: runScript(chosen, units) });
  }, [untouched, chosen, units, script, change]);
  const fast = read.ok ? fasterThanStated(read.run, settings) : [];
  const errors = read.ok ? [] : read.errors;
  const wrong = errors.map(({ line, message, mend }) => `Line ${line}: ${message} ${mend}`);
  const { key, role } = useSaidOncePaused(wrong.length > 0 ? wrong.join(' ') : undefined);
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
          aria-invalid={errors.length > 0 ? true : undefined}
          aria-describedby={errors.length > 0 ? 'run-errors' : undefined}
          onChange={(event) => change({ script: event.target.value, marks: [] }, 'typing the run')}
        />
        <div key={key} id="run-errors" role={role}>
          {wrong.length > 0 && <span className="spoken">The run: </span>}
          <ul className={styles.errors}>
            {wrong.map((words, index) => (
              <li key={index}>{words}</li>
            ))}
          </ul>
        </div>
      </div>
      {fast.length > 0 && (
        <div role="alert">
          <ul className={styles.warning}>
            {fast.map(({ step, fromM, toM, rateMMin }) => (
              <li key={step}>
                From {sayDepth(fromM, units)} to {sayDepth(toM, units)} the script asks for {printRate(rateMMin, units)}
                , faster than the {printRateLimit(settings.fastestMMin!, units)} you state. Give that step more time.
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}
