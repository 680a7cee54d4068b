'use client';

import { useEffect, useState } from 'react';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useDeskStore } from '../../stage/desk-context';
import { notchesMMin, sayRate } from './lever';
import { steeringOf } from './steering';
import styles from './steer.module.css';

/** How long each speed is offered, ms: there is no hurry, they come round again, and time stands still meanwhile. */
const OFFERED_MS = 1800;

/**
 * All of steering with one switch: pressed, time stands still and one speed after another is offered; pressed again, the
 * one on offer is taken and time goes on.
 */
export function OneSwitch() {
  const steering = steeringOf(useDeskStore());
  const units = usePreferences((state) => state.units);
  const [offered, offer] = useState<number>();
  const notches = notchesMMin(units);
  // Level first, then from slow to fast, up before down.
  const choices = [...notches].sort((one, other) => Math.abs(one) - Math.abs(other) || one - other);
  const most = choices.length;

  useEffect(() => {
    if (offered === undefined) return undefined;
    const timer = setTimeout(() => offer((offered + 1) % most), OFFERED_MS);
    return () => clearTimeout(timer);
  }, [offered, most]);

  const press = () => {
    if (offered === undefined) {
      steering.getState().wait();
      offer(0);
      return;
    }
    offer(undefined);
    steering.getState().set(choices[offered]!);
  };
  const { way, speed } = sayRate(choices[offered ?? 0]!, units);
  const words = way === 'level' ? 'level' : `${way} at ${speed}`;
  return (
    <div className={styles.oneSwitch}>
      <Button
        aria-pressed={offered !== undefined}
        title="With one switch: press to stop time and be offered one speed after another; press again to take one"
        onClick={press}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || offered === undefined) return;
          event.preventDefault();
          offer(undefined);
        }}
      >
        {offered === undefined ? 'Offer speeds' : `${words}?`}
      </Button>
      <span role="status" className="spoken">
        {offered !== undefined && words}
      </span>
    </div>
  );
}
