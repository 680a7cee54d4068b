'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { workingFor, type ReadingId } from '@/lib/working/all';
import { toleratedWorking, type Tolerated } from '@/lib/working/tolerated-working';
import { WorkingPanel } from '../parts/working/WorkingPanel';

export interface CurveAsked {
  /** The dive that ends where the curve is read, or passes there. */
  dive: Dive;
  /** When it passes there, among samples so many seconds apart; its end where left out. */
  at?: { readonly timeS: number; readonly everyS: number };
  reading: ReadingId | Tolerated;
  /** Which point of which curve it is, in words. */
  where: string;
}

/** One leg is one sample: the working follows the legs. */
const WHOLE_LEGS_S = 1e9;

/** The working behind a point of a curve: that of a dive at a moment. */
export function CurveWorking({ dive, at, reading, where, onClose }: CurveAsked & { onClose: () => void }) {
  const working = useMemo(() => {
    const timeline = computeTimeline(dive, at?.everyS ?? WHOLE_LEGS_S);
    const sample = at ? sampleAt(timeline, at.timeS) : timeline.length - 1;
    const figures = figuresOf(timeline);
    return typeof reading === 'string' ? workingFor(reading, timeline, figures, sample) : toleratedWorking({ timeline, figures, sample }, reading);
  }, [dive, at, reading]);
  return <WorkingPanel working={working} where={where} onClose={onClose} />;
}
