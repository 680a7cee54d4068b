'use client';

import { useMemo } from 'react';
import { shownAt } from '@/lib/rules/unit/shown';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { STOP_KINDS } from '@/lib/rules/stop-kinds';
import { usePreferences } from '../../parts/preferences';
import { Reading } from '../../parts/Reading';
import { useCovering } from '../covering';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';
import type { ReadingId } from '../reading-ids';
import { tileOf } from '../tile-of';
import { DeskWhy } from '../why/DeskWhy';
import { StopMark } from './StopMark';
import { chosenWatch } from '../../pictures/scene-watches';

/** What the chosen unit adds to the model at the cursor: speed, safety stop, imposed stop, alarms, the wait before flying. */
export function UnitReadings({ only }: { only?: readonly ReadingId[] | undefined }) {
  const cover = useCovering(only);
  const watch = useDeskOncePainted(chosenWatch);
  const unit = useDeskOncePainted((state) => (state.scene.setups[state.unit] ? state.unit : 0));
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const shown = useMemo(() => shownAt(watch, sample, units), [watch, sample, units]);
  const { safetyStop, imposedStop } = shown;
  const said = unitSayings(shown, units);
  return (
    <>
      {shown.rateMMin !== null && (
        <Reading
          {...cover('rate')}
          why={<DeskWhy unit={unit} reading="rate" about="this rate" />}
          {...tileOf(said.rate)}
          roomFor={4}
        />
      )}
      {safetyStop && (
        <Reading
          {...cover('safety-stop')}
          why={<DeskWhy unit={unit} reading="safety-stop" about="this safety stop" />}
          {...tileOf(said['safety-stop'])}
          roomFor={5}
          note={
            <span title={STOP_KINDS.safety.explanation}>
              <StopMark kind="safety" /> {said['safety-stop'].note}
            </span>
          }
        />
      )}
      {imposedStop && (
        <Reading
          {...cover('imposed-stop')}
          why={<DeskWhy unit={unit} reading="imposed-stop" about="this imposed stop" />}
          {...tileOf(said['imposed-stop'])}
          roomFor={5}
          note={
            <span title={STOP_KINDS.imposed.explanation}>
              <StopMark kind="imposed" /> {said['imposed-stop'].note}
            </span>
          }
        />
      )}
      {shown.noFlyH !== null && (
        <Reading
          {...cover('no-fly')}
          why={<DeskWhy unit={unit} reading="no-fly" about="this wait before flying" />}
          {...tileOf(said['no-fly'])}
          roomFor={8}
        />
      )}
    </>
  );
}
