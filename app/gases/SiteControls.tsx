'use client';

import { readGradientFactors, readSiteAltitude } from '@/lib/dive/script/settings/setting-values';
import type { Narcotic } from '@/lib/exposure/gas-depths';
import { WATERS } from '@/lib/physics/water';
import { printAltitude } from '@/lib/quantity/altitude';
import { printFactors } from '@/lib/quantity/percent';
import { Choice } from '../parts/Choice';
import { usePreferences } from '../parts/preferences';
import { Segmented } from '../parts/Segmented';
import { TypedValue } from '../parts/TypedValue';
import { useSite } from './site-store';
import styles from './gases.module.css';

const NARCOTIC: readonly { value: Narcotic; label: string }[] = [
  { value: 'nitrogen and oxygen', label: 'Narcotic' },
  { value: 'nitrogen', label: 'Not narcotic' },
];

/** Water, altitude, limits and what counts as narcotic, for all the sums of the screen. */
export function SiteControls() {
  const { water, altitudeM, gradientFactors, narcotic, set } = useSite();
  const units = usePreferences((state) => state.units);
  return (
    <div className={styles.controls} role="group" aria-label="Where, and by which limits">
      <Choice
        label="Water"
        value={water}
        onChange={(next) => set({ water: next })}
        options={WATERS.map((value) => ({ value, label: value }))}
      />
      <TypedValue
        label="Altitude"
        shown={printAltitude(altitudeM, units)}
        parse={readSiteAltitude}
        live
        onValue={(next) => set({ altitudeM: next })}
      />
      <TypedValue
        label="Gradient factors"
        shown={printFactors(gradientFactors)}
        parse={readGradientFactors}
        live
        onValue={(next) => set({ gradientFactors: next })}
      />
      <Segmented
        label="Oxygen counts as"
        segments={NARCOTIC}
        value={narcotic}
        onChange={(next) => set({ narcotic: next })}
      />
    </div>
  );
}
