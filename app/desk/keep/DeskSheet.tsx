'use client';

import { useMemo } from 'react';
import { cursorSample } from '../../stage/desk-store';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { usePreferences } from '../../parts/preferences';
import { Watermarked } from '../../parts/Watermarked';
import { ProfilePicture } from '../../pictures/profile/ProfilePicture';
import { diveTitle } from '../../pictures/dive-title';
import { PrintedReadings } from './PrintedReadings';
import { pictures as kinds } from '../../stage/figures/all';
import { useOverlay } from '../../stage/figures/use-overlay';
import { sayOverlaid } from '../../pictures/profile/overlaid-dive';
import { usePrintChoice } from './print-times';
import { usePrinting } from './use-printing';
import styles from './desk-sheet.module.css';

/** CSS pixels across an A4 sheet within its margins. */
const PAPER = { width: 680, height: 250 };

/** A longer script is set in two columns, to stay on the sheet. */
const LINES_IN_ONE_COLUMN = 26;

/** The desk on one sheet of paper: the dive, its readings at chosen times and its script. It is there only while printing. */
export function DeskSheet() {
  return usePrinting() ? <Sheet /> : null;
}

function Sheet() {
  const { script, scene, cursorS, errors, pictures } = useDeskStore().getState();
  const sample = useDesk(cursorSample);
  const { drawn, others } = usePrintChoice();
  const overlay = useOverlay();
  const endS = Math.max(scene.timeline.timeS.at(-1)!, overlay?.timeline.timeS.at(-1) ?? 0);
  const view = useMemo(() => ({ startS: 0, endS }), [endS]);
  const lines = script.trim().split('\n').length;
  const units = usePreferences((state) => state.units);
  return (
    <Watermarked>
      <article className={styles.sheet} aria-label="Printed sheet">
        <h2>{diveTitle(script, scene, units)}</h2>
        {errors.length > 0 && (
          <p>The script has mistakes; the picture and the readings are of the last dive that made sense.</p>
        )}
        {drawn && (
          <>
            <ProfilePicture
              scene={scene}
              sample={sample}
              cursorS={cursorS}
              {...PAPER}
              units={units}
              onCursor={() => undefined}
              overlay={overlay}
              view={view}
            />
            <p className={styles.roof}>
              {overlay && `${sayOverlaid(overlay, scene, units)} `}
              The hatched roof is the ceiling: the model asks you to stay below it. The dotted line is the moment in
              bold type below.
            </p>
          </>
        )}
        <PrintedReadings />
        <h3>The script</h3>
        <pre className={styles.script} data-columns={lines > LINES_IN_ONE_COLUMN ? 2 : 1}>
          {script.trim()}
        </pre>
        {others &&
          pictures
            .filter((id) => id !== 'profile')
            .map((id) => {
              const { Figure } = kinds[id];
              return <Figure key={id} />;
            })}
      </article>
    </Watermarked>
  );
}
