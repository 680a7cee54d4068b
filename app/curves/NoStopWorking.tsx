'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline } from '@/lib/dive/timeline';
import { sayDepth } from '@/lib/quantity/depth';
import { fixed } from '@/lib/quantity/number';
import { workingFor } from '@/lib/working/all';
import { usePreferences } from '../parts/preferences';
import { WorkingPanel } from '../parts/working/WorkingPanel';
import { arrivalAt, sayWish, type CurveWish } from './curve-wish';

export interface NoStopAsked {
  wish: CurveWish;
  depthM: number;
  descentMMin: number | undefined;
}

/** One leg is one sample: the working follows the legs. */
const WHOLE_LEGS_S = 1e9;

/** The working behind a point of a no-stop curve: that of a dive that has just arrived there. */
export function NoStopWorking({ wish, depthM, descentMMin, onClose }: NoStopAsked & { onClose: () => void }) {
  const units = usePreferences((state) => state.units);
  const working = useMemo(() => {
    const timeline = computeTimeline(arrivalAt(wish, depthM, descentMMin), WHOLE_LEGS_S);
    return workingFor('no-stop', timeline, figuresOf(timeline), timeline.length - 1);
  }, [wish, depthM, descentMMin]);
  const counted = descentMMin === undefined ? '' : `; the curve adds the ${fixed(depthM / descentMMin, 1)} min of the way down`;
  return <WorkingPanel working={working} where={`On arriving at ${sayDepth(depthM, units)}: ${sayWish(wish, units)}${counted}`} onClose={onClose} />;
}
