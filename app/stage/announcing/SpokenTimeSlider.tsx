'use client';

import { useId } from 'react';
import { sayWhereShortly } from '@/lib/sayings/where';
import { usePreferences } from '../../parts/preferences';
import { useDesk } from '../desk-context';
import { cursorSample } from '../desk-store';
import { modelMomentOf } from '../model-moment';
import { TimeSlider } from '../TimeSlider';
import { ASK_KEY } from './ask-key';

/** The hand on time, whose value says where the diver is; while time goes by itself it keeps still for those who listen. */
export function SpokenTimeSlider() {
  const playing = useDesk((state) => state.playing);
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const covered = useDesk((state) => state.covered);
  const units = usePreferences((state) => state.units);
  const where = playing ? 'Playing' : sayWhereShortly({ model: modelMomentOf(scene, sample), covered }, units);
  const hintId = useId();
  return (
    <>
      <TimeSlider valueText={where} describedBy={hintId} />
      <span id={hintId} hidden>
        {ASK_KEY} says where the diver is.
      </span>
    </>
  );
}
