'use client';

import { lazy } from 'react';
import { WhyButton } from '../parts/working/WhyButton';
import { WorkingUnloaded } from '../parts/working/WorkingUnloaded';
import type { NoStopAsked } from './NoStopWorking';

/** Loaded when first asked for: the mathematics behind it is heavy. */
const NoStopWorking = lazy(() =>
  import('./NoStopWorking').then(
    (module) => ({ default: module.NoStopWorking }),
    () => ({ default: WorkingUnloaded }),
  ),
);

/** Asks why a curve has the no-stop time it has at a depth. */
export function WhyNoStop(asked: NoStopAsked) {
  return (
    <WhyButton about="this no-stop time" small>
      {(close) => <NoStopWorking {...asked} onClose={close} />}
    </WhyButton>
  );
}
