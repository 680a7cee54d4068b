'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { workingFor, type ReadingId } from '@/lib/working/all';
import { WorkingPanel } from '../parts/working/WorkingPanel';

export interface CurveAsked {
  /** The dive that ends where the curve is read. */
  dive: Dive;
  reading: ReadingId;
  /** Which point of which curve it is, in words. */
  where: string;
}

/** One leg is one sample: the working follows the legs. */
const WHOLE_LEGS_S = 1e9;

/** The working behind a point of a curve: that of a dive that ends there. */
export function CurveWorking({ dive, reading, where, onClose }: CurveAsked & { onClose: () => void }) {
  const working = useMemo(() => {
    const timeline = computeTimeline(dive, WHOLE_LEGS_S);
    return workingFor(reading, timeline, figuresOf(timeline), timeline.length - 1);
  }, [dive, reading]);
  return <WorkingPanel working={working} where={where} onClose={onClose} />;
}
