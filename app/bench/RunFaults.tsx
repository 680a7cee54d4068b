import { useEffect } from 'react';
import { fasterThanStated } from '@/lib/bench/chamber-dive';
import { sayDepth } from '@/lib/quantity/depth';
import { printRate, printRateLimit } from '@/lib/quantity/rate';
import { usePreferences } from '../parts/preferences';
import { useSaidOncePaused } from '../parts/said-once-paused';
import { useBench } from './bench-context';
import { useRun } from './use-sheets';
import styles from './bench.module.css';

/** Why the run can't be read, under the box it is written in. Tells whether anything is wrong. */
export function RunFaults({ onFaulty }: { onFaulty: (faulty: boolean) => void }) {
  const read = useRun();
  const errors = read.ok ? [] : read.errors;
  const wrong = errors.map(({ line, message, mend }) => `Line ${line}: ${message} ${mend}`);
  const { key, role } = useSaidOncePaused(wrong.length > 0 ? wrong.join(' ') : undefined);
  useEffect(() => onFaulty(!read.ok), [read.ok, onFaulty]);
  return (
    <div key={key} id="run-errors" role={role}>
      {wrong.length > 0 && <span className="spoken">The run: </span>}
      <ul className={styles.errors}>
        {wrong.map((words, index) => (
          <li key={index}>{words}</li>
        ))}
      </ul>
    </div>
  );
}

/** Steps that ask for a faster change of pressure than the person states the chamber can make. */
export function TooFast() {
  const read = useRun();
  const settings = useBench((state) => state.settings);
  const units = usePreferences((preferences) => preferences.units);
  const fast = read.ok ? fasterThanStated(read.run, settings) : [];
  if (fast.length === 0) return null;
  return (
    <div role="alert">
      <ul className={styles.warning}>
        {fast.map(({ step, fromM, toM, rateMMin }) => (
          <li key={step}>
            From {sayDepth(fromM, units)} to {sayDepth(toM, units)} the script asks for {printRate(rateMMin, units)},
            faster than the {printRateLimit(settings.fastestMMin!, units)} you state. Give that step more time.
          </li>
        ))}
      </ul>
    </div>
  );
}
