'use client';

import { useContext, useState } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import { printClock, printHours } from '@/lib/quantity/duration';
import { printDayClock } from '@/lib/dive/day-clock';
import { printAs } from '@/lib/sayings/measures';
import { PictureFrame } from './PictureFrame';
import { useDesk } from '../desk-context';
import { useOpened } from '../../parts/use-opened';
import { ProfileHandles } from './ProfileHandles';
import { StepEditor } from './StepEditor';
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
import { usePicture } from './use-picture';
import styles from '../../pictures/pictures.module.css';

const TABLE_EVERY_S = 60;

export function ProfileFigure() {
  const { ref, measured, ...picture } = usePicture((width) => (width < 600 ? 250 : 260));
  const { scene, units } = picture;
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
  const samples = () => {
    const chosen: number[] = [];
    let nextS = 0;
    for (let i = 0; i < timeline.length; i += 1) {
      const timeS = timeline.timeS[i]!;
      const newLeg = i === 0 || timeline.leg[i] !== timeline.leg[i - 1] || i === timeline.length - 1;
      if (!newLeg && timeS < nextS) continue;
      chosen.push(i);
      nextS = timeS + TABLE_EVERY_S;
    }
    return chosen;
  };

  return (
    <PictureFrame
      id="profile"
      actions={
        <div className={styles.tools}>
          {!fixed && <OverlayChooser />}
          <ZoomControls />
          {filled && <SaveReadings />}
          {filled && <SaveDivePage />}
        </div>
      }
      title="The dive"
      sentence={
        (overlay ? `${sayOverlaid(overlay, scene, units)} ` : '') +
        `${dives > 1 ? `${dives} dives in ${printHours(timeline.timeS.at(-1)!)}` : `Depth over ${printClock(timeline.timeS.at(-1)!)}`}, to ${sayDepth(deepestM, units)}. ` +
        (ceilingM > 0
          ? `The hatched roof is the ceiling; it comes down to ${printAs('ceilingM', ceilingM, units)}.`
          : 'No ceiling appears.')
      }
      columns={[
        { heading: 'Time', cell: (i: number) => printDayClock(timeline, timeline.timeS[i]!) },
        { heading: 'Depth', numeric: true, cell: (i) => printAs('depth', timeline.depthM[i]!, units) },
        {
          heading: 'Ceiling',
          numeric: true,
          cell: (i) => printAs('ceilingM', figures.ceilingM[i]!, units),
        },
        { heading: 'No-stop time', numeric: true, cell: (i) => printAs('noStopMin', figures.noStopMin[i]!, units) },
      ]}
      rows={samples}
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
