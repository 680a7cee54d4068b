'use client';

import { figuresAt } from '@/lib/ascent/figures';
import { gasAt } from '@/lib/dive/timeline';
import { gasName } from '@/lib/physics/gas';
import { printDepth, printStopDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../../stage/desk-store';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { ascentMinutesText, noStopText } from '../../pictures/print-figures';
import type { ReadingId } from '../../stage/reading-ids';
import type { Scene } from '../../pictures/scene';
import { printedSamples, usePrintChoice } from './print-times';
import styles from './desk-sheet.module.css';

interface Row {
  readonly scene: Scene;
  readonly sample: number;
  readonly now: ReturnType<typeof figuresAt>;
  readonly units: UnitSystem;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

/** The columns of the sheet. A covered reading is printed as a blank to fill in. */
const COLUMNS: readonly { id?: ReadingId; heading: string; cell: (row: Row) => string }[] = [
  { id: 'time', heading: 'Time', cell: ({ scene, sample }) => printClock(scene.timeline.timeS[sample]!) },
  {
    id: 'depth',
    heading: 'Depth',
    cell: ({ scene, sample, units }) => printDepth(scene.timeline.depthM[sample]!, units),
  },
  { heading: 'Gas', cell: ({ scene, sample }) => gasName(gasAt(scene.timeline, sample)) },
  { id: 'no-stop', heading: 'No-stop time', cell: ({ now }) => `${noStopText(now.noStop.minutes)} min` },
  {
    id: 'ceiling',
    heading: 'Ceiling',
    cell: ({ now, units }) => (now.ceiling.depthM > 0 ? printDepth(now.ceiling.depthM, units) : 'none'),
  },
  { id: 'required-stop', heading: 'Required stop', cell: ({ now, units }) => stopText(now, units) },
  {
    id: 'time-to-surface',
    heading: 'Time to surface',
    cell: ({ now }) => `${ascentMinutesText(now.schedule.timeToSurfaceMin)} min`,
  },
  { id: 'supersaturation', heading: 'Super­saturation', cell: ({ now }) => percent(now.supersaturation.value) },
  {
    id: 'surfacing-supersaturation',
    heading: 'On surfacing',
    cell: ({ now }) => percent(now.surfacingSupersaturation.value),
  },
];

/** The readings at chosen times, for paper. */
export function PrintedReadings() {
  const { scene, cursorS, covered } = useDeskStore().getState();
  const cursor = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const times = usePrintChoice((state) => state.times);
  const { timeline, figures } = scene;
  const rows = printedSamples(timeline, times, cursorS).map((sample): Row => ({
    scene,
    sample,
    now: figuresAt(timeline, figures, sample),
    units,
  }));
  return (
    <table className={styles.readings}>
      <caption>{times === 'points' ? 'Readings where the dive turns' : 'Readings at even times'}, by the model</caption>
      <thead>
        <tr>
          {COLUMNS.map(({ heading }) => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.sample} className={row.sample === cursor ? styles.now : undefined}>
            {COLUMNS.map(({ id, heading, cell }) =>
              id && covered.includes(id) ? (
                <td key={heading} className={styles.blank}>
                  <span className="spoken">to fill in</span>
                </td>
              ) : (
                <td key={heading}>{cell(row)}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function stopText({ schedule }: Row['now'], units: UnitSystem): string {
  const [stop] = schedule.stops;
  return stop ? `${stop.minutes} min at ${printStopDepth(stop.depthM, units)}` : 'none';
}
