'use client';

import { useMemo } from 'react';
import { figuresAt } from '@/lib/ascent/figures';
import { gasAt } from '@/lib/dive/timeline';
import { gasName } from '@/lib/physics/gas';
import { printDepth, printStopDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { usePreferences } from '../parts/preferences';
import { fetchedLater } from '../parts/fetched-later';
import { Button } from '../parts/Button';
import { Reading } from '../parts/Reading';
import { useCovering } from './covering';
import { cursorSample } from './desk-store';
import { useDesk } from './desk-context';
import { ascentMinutesText, noStopText } from '../pictures/print-figures';
import { ExposureReadings, isExposureReading } from './gas/ExposureReadings';
import { READING_IDS, type ReadingId } from './reading-ids';
import { DeskWhy } from './why/DeskWhy';
import styles from './stage.module.css';

// What a unit adds to the model comes with its rules, after the desk has opened.
const UnitReadings = fetchedLater(
  async () => (await import('./after-opening')).UnitReadings,
  // The one that is always there keeps its place.
  ({ only }) => (
    <Reading label="Rate" absent={only !== undefined && !only.includes('rate')} value="…" roomFor={3} note="…" />
  ),
);

/** What the model says at the time cursor: every reading, or `only` some. */
export function ReadingsPanel({ only }: { only?: readonly ReadingId[] }) {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const { timeline, figures } = scene;
  const now = useMemo(() => figuresAt(timeline, figures, sample), [timeline, figures, sample]);
  const [depth, depthUnit] = printDepth(timeline.depthM[sample]!, units).split(' ');
  const [ceiling, ceilingUnit] = printDepth(now.ceiling.depthM, units).split(' ');
  const stop = now.schedule.stops[0];
  const asked = now.ceiling.depthM > 0;
  const covered = useDesk((state) => state.covered);
  const change = useDesk((state) => state.change);
  const cover = useCovering(only);

  return (
    <section aria-label="Readings" data-tour="readings" className={styles.readings}>
      <div className={styles.readingsHead}>
        <h2>Readings</h2>
        <Button kind="quiet" onClick={() => change({ covered: covered.length === 0 ? READING_IDS : [] })}>
          {covered.length === 0 ? 'Cover all' : 'Uncover all'}
        </Button>
      </div>
      <Reading
        {...cover('depth')}
        label="Depth"
        value={depth!}
        unit={depthUnit}
        roomFor={5}
        note={`on ${gasName(gasAt(timeline, sample))}`}
      />
      <Reading
        {...cover('time')}
        label="Time"
        value={printClock(timeline.timeS[sample]!)}
        roomFor={7}
        note="since the start"
      />
      <Reading
        {...cover('no-stop')}
        label="No-stop time"
        why={<DeskWhy reading="no-stop" about="this no-stop time" />}
        value={noStopText(now.noStop.minutes)}
        unit="min"
        roomFor={3}
        note={<NoStopNote now={now} />}
      />
      <Reading
        {...cover('ceiling')}
        label="Ceiling"
        why={<DeskWhy reading="ceiling" about="this ceiling" />}
        value={asked ? ceiling! : 'none'}
        unit={asked ? ceilingUnit : undefined}
        roomFor={5}
        tone={asked ? 'stop' : 'plain'}
        note={asked ? `set by compartment ${now.ceiling.leader}` : 'you may surface'}
      />
      <Reading
        {...cover('required-stop')}
        label="Required stop"
        why={<DeskWhy reading="required-stop" about="this required stop" />}
        value={stop ? printStopDepth(stop.depthM, units).split(' ')[0]! : 'none'}
        unit={stop ? printStopDepth(stop.depthM, units).split(' ')[1] : undefined}
        roomFor={4}
        tone={stop ? 'stop' : 'plain'}
        note={stop ? `you need to stop there for ${stop.minutes} min` : 'straight up is tolerated'}
      />
      <Reading
        {...cover('time-to-surface')}
        label="Time to surface"
        why={<DeskWhy reading="time-to-surface" about="this time to surface" />}
        value={ascentMinutesText(now.schedule.timeToSurfaceMin)}
        unit="min"
        roomFor={4}
        note={stops(now.schedule.stops.length)}
      />
      <Reading
        {...cover('supersaturation')}
        label="Supersaturation"
        why={<DeskWhy reading="supersaturation" about="this supersaturation" />}
        value={percent(now.supersaturation.value)}
        unit="%"
        roomFor={4}
        note={`now, compartment ${now.supersaturation.leader}`}
      />
      <Reading
        {...cover('surfacing-supersaturation')}
        label="On surfacing"
        why={<DeskWhy reading="surfacing-supersaturation" about="this supersaturation on surfacing" />}
        value={percent(now.surfacingSupersaturation.value)}
        unit="%"
        roomFor={4}
        note={`if up this instant, compartment ${now.surfacingSupersaturation.leader}`}
      />
      <UnitReadings only={only} />
      {(only === undefined || only.some(isExposureReading)) && <ExposureReadings only={only} />}
    </section>
  );
}

function NoStopNote({ now: { noStop, creditedNoStopMin } }: { now: ReturnType<typeof figuresAt> }) {
  if (noStop.leader === 0) return 'no compartment will reach its limit here';
  if (noStop.minutes === 0 && creditedNoStopMin === 0) return `over, by compartment ${noStop.leader}`;
  return (
    <>
      compartment {noStop.leader}; {noStopText(creditedNoStopMin)} with credit for the way up{' '}
      <DeskWhy small reading="credited-no-stop" about="the no-stop time with credit for the way up" />
    </>
  );
}

const percent = (value: number) => String(Math.round(value * 100));

function stops(count: number): string {
  if (count === 0) return 'no stops on the way';
  return count === 1 ? 'one stop on the way' : `${count} stops on the way`;
}
