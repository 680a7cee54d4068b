'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { workingFor, type ReadingId } from '@/lib/working/all';
import { modelNoStopWorking, type ModelAsked } from '@/lib/working/model-no-stop-working';
import { toleratedWorking, type Tolerated } from '@/lib/working/tolerated-working';
import type { Working } from '@/lib/working/working';
import { WorkingPanel } from '../parts/working/WorkingPanel';

interface DiveAsked {
  /** The dive that ends where the curve is read, or passes there. */
  readonly dive: Dive;
  /** When it passes there, among samples so many seconds apart; its end where left out. */
  readonly at?: { readonly timeS: number; readonly everyS: number };
  readonly reading: ReadingId | Tolerated;
}

/** What a point of a curve is asked about: a dive that gets there, or another model; `where` it is, in words. */
export type CurveAsked = { readonly where: string } & (DiveAsked | { readonly by: ModelAsked });

/** One leg is one sample: the working follows the legs. */
const WHOLE_LEGS_S = 1e9;

/** The working behind a point of a curve. */
export function CurveWorking({ asked, onClose }: { asked: CurveAsked; onClose: () => void }) {
  const working = useMemo(() => ('by' in asked ? modelNoStopWorking(asked.by) : workingAlong(asked)), [asked]);
  return <WorkingPanel working={working} where={asked.where} onClose={onClose} />;
}

function workingAlong({ dive, at, reading }: DiveAsked): Working {
  const timeline = computeTimeline(dive, at?.everyS ?? WHOLE_LEGS_S);
  const sample = at ? sampleAt(timeline, at.timeS) : timeline.length - 1;
  const figures = figuresOf(timeline);
  return typeof reading === 'string' ? workingFor(reading, timeline, figures, sample) : toleratedWorking({ timeline, figures, sample }, reading);
}
