'use client';

import { useEffect, useRef, useState } from 'react';
import { gaugeBar } from '@/lib/bench/chamber-dive';
import type { ChamberRun } from '@/lib/bench/chamber-run';
import { legsToRun, liveAt, type LiveNow } from '@/lib/bench/live-run';
import { printClock } from '@/lib/quantity/duration';
import { printDepth, sayDepth } from '@/lib/quantity/depth';
import { printPressure } from '@/lib/quantity/pressure';
import { Button } from '../parts/Button';
import { toFirstFault } from '../parts/first-fault';
import { Icon } from '../parts/Icon';
import { usePreferences } from '../parts/preferences';
import { useStatus } from '../parts/status';
import { useBench } from './bench-context';
import styles from './bench.module.css';
import { capital } from '@/lib/quantity/capital';

const TICK_MS = 250;
/** A computer's clock is set right by a little now and then; more than this is told, s. */
const TOLD_FROM_S = 2;
/** How often where the clock stands is kept while a run is under way, s. */
const KEPT_EVERY_S = 5;

/** The run against the clock: what to do now, where the gauge should be, when to read the units. */
export function LivePanel({ run }: { run: ChamberRun }) {
  const marks = useBench((state) => state.marks);
  const settings = useBench((state) => state.settings);
  const change = useBench((state) => state.change);
  const undo = useBench((state) => state.undo);
  const say = useStatus((status) => status.say);
  const units = usePreferences((preferences) => preferences.units);
  const legs = legsToRun(run);
  const underway = marks.length > 0 && marks.length <= legs.length;
  const pastS = marks.at(-1) ?? 0;
  const clock = useBench((state) => state.clock);
  const { nowS, putBackS } = useClock(underway, pastS);
  const now = liveAt(run, settings, marks, Math.max(nowS, pastS), units);
  const next = () => {
    if (marks.length === 0) {
      // Nobody starts into a chamber half stated; a run that is under way waits for nothing.
      if (toFirstFault()) return;
      // A new run goes by the computer's clock as it is now.
      clock.goOn(undefined);
    }
    change({ marks: [...marks, clock.nowS(pastS)] });
  };
  const steps = useRef<HTMLDivElement>(null);
  const end = () => {
    change({ marks: [] });
    // The work goes on at the first step.
    requestAnimationFrame(() => steps.current?.querySelector('button')?.focus());
    say('The clock is put back to nought. The readings stay.', { label: 'Undo', run: undo });
  };
  return (
    <section aria-labelledby="live" className={`${styles.step} ${styles.unprinted}`}>
      <h2 id="live">Run it against the clock</h2>
      <div className={styles.live}>
        <dl className={styles.clocks}>
          <div>
            <dt>Time of the run</dt>
            <dd>{printClock(now.runS)}</dd>
          </div>
          <div>
            <dt>{now.leftS < 0 ? 'This step is late by' : 'Left of this step'}</dt>
            <dd>{printClock(Math.abs(now.leftS))}</dd>
          </div>
          <div>
            <dt>The gauge should be at</dt>
            <dd>
              {printDepth(now.gaugeM, units)}{' '}
              <span className={styles.soft}>{printPressure(gaugeBar(settings, now.gaugeM), units)}</span>
            </dd>
          </div>
        </dl>
        <p className={styles.todo} role="status">
          {capital(now.todo)}
          {now.kind !== 'ready' &&
            now.checkpoints.length > 0 &&
            ` Then read the units: ${now.checkpoints.map(({ name }) => name).join(', ')}.`}
        </p>
        <p className={styles.readNow} role="status">
          {underway && now.leftS <= 0 && overdue(now)}
        </p>
        <p className={now.warning ? styles.warning : styles.silent} role="alert">
          {now.warning && (
            <>
              <Icon name="caution" /> {now.warning}
            </>
          )}
        </p>
        <div ref={steps} className={styles.row}>
          {now.kind !== 'over' && (
            <Button kind="primary" onClick={next}>
              {doneWords(now, legs[now.leg], units)}
            </Button>
          )}
          {marks.length > 0 && <Button onClick={end}>Put the clock back</Button>}
        </div>
        {underway && putBackS > TOLD_FROM_S && (
          <p className={styles.soft}>
            This computer’s clock was put back by {printClock(putBackS)}. The run goes on from where it was; time that
            passed while this page was closed is not counted.
          </p>
        )}
        {settings.fastestMMin === null && (
          <p className={styles.soft}>
            State above how fast the pressure may change at most, and you are warned when a step is faster.
          </p>
        )}
        {marks.length > 1 && <p className={styles.soft}>The sheet below goes by the times the steps really took.</p>}
      </div>
    </section>
  );
}

/** What to do once a step has taken its time. */
function overdue({ kind, checkpoints }: LiveNow): string {
  if (kind !== 'hold') return 'The time of this step is over. Go on when the gauge is there.';
  return checkpoints.length > 0 ? 'The hold is over. Read the units now, then go on.' : 'The hold is over. Go on.';
}

function doneWords({ kind, leftS }: LiveNow, leg: { toM: number } | undefined, units: 'metric' | 'imperial'): string {
  if (kind === 'ready') return 'Start the clock';
  if (kind === 'hold') return leftS > 0 ? 'End the hold early' : 'Go on';
  return `The gauge is at ${leg?.toM === 0 ? 'nothing' : sayDepth(leg?.toM ?? 0, units)}`;
}

/** The clock of the run, kept fresh while it is looked at, and where it stands kept for when the page is opened again. */
function useClock(running: boolean, pastS: number): { nowS: number; putBackS: number } {
  const clock = useBench((state) => state.clock);
  const keepClock = useBench((state) => state.keepClock);
  const [read, setRead] = useState({ nowS: 0, putBackS: 0 });
  useEffect(() => {
    if (!running) return undefined;
    let keptS = clock.standing();
    const tick = () => {
      const nowS = clock.nowS(pastS);
      const putBackS = clock.putBackS();
      setRead({ nowS, putBackS });
      if (putBackS === keptS.aheadS && nowS < keptS.lastS + KEPT_EVERY_S) return;
      keptS = clock.standing();
      keepClock();
    };
    const timer = setInterval(tick, TICK_MS);
    window.addEventListener('pagehide', keepClock);
    return () => {
      clearInterval(timer);
      window.removeEventListener('pagehide', keepClock);
    };
  }, [clock, keepClock, running, pastS]);
  return read;
}
