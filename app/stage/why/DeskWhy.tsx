'use client';

import { lazy, memo } from 'react';
import type { UnitReadingId } from '@/lib/working/rules/unit-all';
import { WhyButton } from '../../parts/working/WhyButton';
import { WorkingUnloaded } from '../../parts/working/WorkingUnloaded';

/** Loaded when first asked for: the mathematics behind it is heavy. */
const DeskWorking = lazy(() =>
  import('./DeskWorking').then(
    (module) => ({ default: module.DeskWorking }),
    () => ({ default: WorkingUnloaded }),
  ),
);

interface DeskWhyProps {
  reading: UnitReadingId;
  about: string;
  /** Which of the scene's units is asked; the model itself where left out. */
  unit?: number;
  id?: string;
  small?: boolean;
}

/** Asks why a reading of the desk is what it is, at the time cursor. The answer follows the cursor. */
export const DeskWhy = memo(function DeskWhy({ reading, about, unit, ...button }: DeskWhyProps) {
  return (
    <WhyButton about={about} {...button}>
      {(close) => <DeskWorking reading={reading} unit={unit} onClose={close} />}
    </WhyButton>
  );
});
