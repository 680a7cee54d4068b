'use client';

import { figuresAt } from '@/lib/ascent/figures';
import { printDayClock } from '@/lib/dive/day-clock';
import { modelSayings, type ModelReadingId } from '@/lib/sayings/model-readings';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../../stage/desk-store';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { printedSamples, usePrintChoice } from './print-times';
import styles from './desk-sheet.module.css';

/** The columns of the sheet. */
const COLUMNS: readonly ModelReadingId[] = [
  'time',
  'depth',
  'gas',
  'no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
  'supersaturation',
  'surfacing-supersaturation',
];

/** The readings at chosen times, for paper. */
export function PrintedReadings() {
  const { scene, cursorS, covered } = useDeskStore().getState();
  const cursor = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const times = usePrintChoice((state) => state.times);
  const { timeline, figures } = scene;
  // Covered readings are printed as blanks to fill in.
  const blank = new Set<string>(covered);
  const rows = printedSamples(timeline, times, cursorS).map((sample) => ({
    sample,
    said: modelSayings({ timeline, sample, now: figuresAt(timeline, figures, sample) }, units),
  }));
  return (
    <table className={styles.readings}>
      <caption>{times === 'points' ? 'Readings where the dive turns' : 'Readings at even times'}, by the model</caption>
      <thead>
        <tr>
          {COLUMNS.map((id) => (
            <th key={id} scope="col">
              {rows[0]?.said[id].name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ sample, said }) => (
          <tr key={sample} className={sample === cursor ? styles.now : undefined}>
            {COLUMNS.map((id) =>
              blank.has(id) ? (
                <td key={id} className={styles.blank}>
                  <span className="spoken">to fill in</span>
                </td>
              ) : (
                <td key={id}>{id === 'time' ? printDayClock(timeline, timeline.timeS[sample]!) : said[id].text}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
