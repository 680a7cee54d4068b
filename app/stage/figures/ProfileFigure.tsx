'use client';

import { useContext, useMemo, useState } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import { printClock, printHours } from '@/lib/quantity/duration';
import { printAs } from '@/lib/sayings/measures';
import { PictureFrame } from './PictureFrame';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { useOpened } from '../../parts/use-opened';
import { ProfileHandles } from './ProfileHandles';
import { StepEditor } from './StepEditor';
import { EventKey } from '../units/EventKey';
import { EventMarks } from '../units/EventMarks';
import { OverlayChooser, OverlaySentence } from './OverlayChooser';
import { RoomContext } from './room';
import { SaveDivePage } from '../passed-on/SaveDivePage';
import { SaveReadings } from './SaveReadings';
import { ZoomControls } from './ZoomControls';
import { useOverlay, useShownWays } from './use-overlay';
import { sayOverlaid } from '../../pictures/profile/overlaid-dive';
import { ProfilePicture } from '../../pictures/profile/ProfilePicture';
import type { ProfileScales } from '../../pictures/profile/profile-scales';
import { diveRow, diveRows, underCover, withNow, type DiveRow } from './dive-rows';
import { chosenWatch } from '../../pictures/scene-watches';
import { usePicture } from './use-picture';
import styles from '../../pictures/pictures.module.css';

/** Each row has a way up of its own, so that they are worked out once the table is open, and once for a dive. */
function rowsOnce(...dive: Parameters<typeof diveRows>): () => readonly DiveRow[] {
  let known: readonly DiveRow[] | undefined;
  return () => (known ??= diveRows(...dive));
}

export function ProfileFigure() {
  const { ref, measured, ...picture } = usePicture((width) => (width < 600 ? 250 : 260), true);
  const { scene, sample, units } = picture;
  const fixed = useDesk((state) => state.base !== undefined || state.still);
  const overlay = useOverlay();
  const ways = useShownWays();
  const opened = useOpened();
  const filled = useContext(RoomContext) !== undefined;
  const [held, setHeld] = useState<ProfileScales>();
  const { timeline, figures } = scene;
  const deepestM = timeline.legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 0);
  const ceilingM = figures.ceilingM.reduce((deepest, ceiling) => Math.max(deepest, ceiling), 0);
  const dives = timeline.legs.at(-1)!.diveNumber + 1;
  const watch = useDeskOncePainted(chosenWatch);
  const covered = useDesk((state) => state.covered);
  // oxlint-disable-next-line react/preserve-manual-memoization -- what is kept is no part of these
  const rows = useMemo(() => rowsOnce(scene, watch, units), [scene, watch, units]);

  return (
    <PictureFrame
      id="profile"
      actions={
        <div className={styles.tools}>
          {!fixed && <OverlayChooser />}
          <ZoomControls />
          {filled && opened && <EventKey inMenu />}
          {filled && <SaveReadings />}
          {filled && <SaveDivePage />}
        </div>
      }
      beside={opened && <EventKey />}
      title="The dive"
      sentence={
        (overlay ? `${sayOverlaid(overlay, scene, units)} ` : '') +
        `${dives > 1 ? `${dives} dives in ${printHours(timeline.timeS.at(-1)!)}` : `Depth over ${printClock(timeline.timeS.at(-1)!)}`}, to ${sayDepth(deepestM, units)}. ` +
        (ceilingM > 0
          ? `The hatched roof is the ceiling; it comes down to ${printAs('ceilingM', ceilingM, units)}.`
          : 'No ceiling appears.')
      }
      columns={[
        { heading: 'Time', cell: (row: DiveRow) => `${row.time}${row.sample === sample ? ', now' : ''}` },
        { heading: 'Depth', numeric: true, cell: ({ depth }) => depth },
        { heading: 'Ceiling', numeric: true, cell: ({ ceiling }) => ceiling },
        { heading: 'No-stop time', numeric: true, cell: ({ noStop }) => noStop },
        { heading: 'Required stop', cell: ({ stop }) => stop },
        { heading: 'Leads', numeric: true, cell: ({ leader }) => leader },
        { heading: 'What the unit tells', cell: ({ events }) => events },
      ]}
      rows={() => withNow(rows(), () => diveRow(scene, sample, units), sample).map((row) => underCover(row, covered))}
      marked={(row) => row.sample === sample}
    >
      <div ref={ref} className={`${styles.canvas} ${measured ? '' : styles.unmeasured}`}>
        <ProfilePicture {...picture} held={held} overlay={overlay} ways={ways}>
          {(scales) =>
            opened && (
              <>
                {!fixed && <ProfileHandles scales={scales} units={units} onHold={setHeld} />}
                <EventMarks scales={scales} units={units} onCursor={picture.onCursor} />
              </>
            )
          }
        </ProfilePicture>
      </div>
      {!fixed && !filled && <StepEditor />}
      {!fixed && !filled && <OverlaySentence />}
    </PictureFrame>
  );
}
