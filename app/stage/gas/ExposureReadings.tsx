'use client';

import { useState } from 'react';
import { Disclosure } from '../../parts/Disclosure';
import { fetchedLater } from '../../parts/fetched-later';
import type { ReadingId } from '../reading-ids';
import styles from '../../pictures/gas/exposure.module.css';

const ExposureShown = fetchedLater(async () => (await import('./ExposureShown')).ExposureShown);

const OWN: readonly ReadingId[] = [
  'oxygen-pressure',
  'oxygen-single',
  'oxygen-daily',
  'oxygen-pulmonary',
  'gas-density',
  'cylinder',
];

/** Whether a reading is one of these. */
export function isExposureReading(id: ReadingId): boolean {
  return OWN.includes(id);
}

/** Oxygen, density and the cylinder in use at the cursor, for those who ask for them: fetched and worked out once opened. */
export function ExposureReadings({ only }: { only?: readonly ReadingId[] | undefined }) {
  const [open, setOpen] = useState(false);
  // Asked for by name, they stand among the others.
  if (only) return <ExposureShown only={only} />;
  return (
    <div className={styles.gasReadings}>
      <Disclosure summary="Oxygen, density, cylinder" onToggle={setOpen}>
        {open && <ExposureShown />}
      </Disclosure>
    </div>
  );
}
