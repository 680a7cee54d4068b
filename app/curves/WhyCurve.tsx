'use client';

import { lazy } from 'react';
import { WhyButton } from '../parts/working/WhyButton';
import { WorkingUnloaded } from '../parts/working/WorkingUnloaded';
import type { CurveAsked } from './CurveWorking';

/** Loaded when first asked for: the mathematics behind it is heavy. */
const CurveWorking = lazy(() =>
  import('./CurveWorking').then(
    (module) => ({ default: module.CurveWorking }),
    () => ({ default: WorkingUnloaded }),
  ),
);

/** Asks why a curve says what it says where it is read. */
export function WhyCurve({ about, ask }: { about: string; ask: () => CurveAsked }) {
  return (
    <WhyButton about={about} small>
      {(close) => <CurveWorking asked={ask()} onClose={close} />}
    </WhyButton>
  );
}
