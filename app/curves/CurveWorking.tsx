'use client';

import { useMemo } from 'react';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { workingFor, type ReadingId } from '@/lib/working/all';
import { modelNoStopWorking, type ModelAsked } from '@/lib/working/model/model-no-stop-working';
import { toleratedWorking, type Tolerated } from '@/lib/working/model/tolerated-working';
import { diveAgain, type DiveAgain, type ModelAgain } from '@/lib/working/what-if/dive-again';
import type { Working } from '@/lib/working/working';
import { WorkingPanel } from '../parts/working/WorkingPanel';

export interface CurveAsked {
  /** The dive that ends where the curve is read, or passes there. */
  readonly dive: Dive;
  /** When it passes there, among samples so many seconds apart; its end where left out. */
  readonly at?: { readonly timeS: number; readonly everyS: number };
  readonly reading: ReadingId | Tolerated | ModelAsked;
  /** Which point of which curve it is, in words. */
  readonly where: string;
}

/** One leg is one sample: the working follows the legs. */
const WHOLE_LEGS_S = 1e9;

/** The working behind a point of a curve: that of a dive at a moment. */
export function CurveWorking({ asked, onClose }: { asked: CurveAsked; onClose: () => void }) {
  const { working, onDive } = useMemo(() => workingOf(asked), [asked]);
  return <WorkingPanel working={working} where={asked.where} {...(onDive && { onDive })} onClose={onClose} />;
}

function workingOf({ dive, at, reading }: CurveAsked): { readonly working: Working; readonly onDive?: DiveAgain } {
  const timeline = computeTimeline(dive, at?.everyS ?? WHOLE_LEGS_S);
  const sample = at ? sampleAt(timeline, at.timeS) : timeline.length - 1;
  const made = (...[then, figures, sampleThen]: Parameters<ModelAgain['working']>): Working => {
    if (typeof reading === 'string') return workingFor(reading, then, figures, sampleThen);
    const instant = { timeline: then, figures, sample: sampleThen };
    return 'model' in reading ? modelNoStopWorking(instant, reading) : toleratedWorking(instant, reading);
  };
  const working = made(timeline, figuresOf(timeline, dive.settings), sample);
  // What a compartment tolerates is one formula: the working says all of it.
  if (typeof reading !== 'string' && !('model' in reading)) return { working };
  return { working, onDive: diveAgain({ working, dive, timeline, sample }, { of: 'model', working: made }) };
}
