'use client';

import { useEffect } from 'react';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { followOtherWindows, usePreferences } from './preferences';
import { Segmented, type Segment } from './Segmented';
import type { Theme } from './theme';
import styles from './PreferenceSwitches.module.css';

const unitSegments: readonly Segment<UnitSystem>[] = [
  { value: 'metric', label: 'Metric' },
  { value: 'imperial', label: 'Imperial' },
];

const themeSegments: readonly Segment<Theme>[] = [
  { value: 'light', label: 'Light', icon: 'sun' },
  { value: 'dark', label: 'Dark', icon: 'moon' },
  { value: 'system', label: 'As this machine is set', icon: 'screen' },
];

/** Units and theme: one switch each, for every screen at once. */
export function PreferenceSwitches() {
  const { units, theme, setUnits, setTheme } = usePreferences();
  useEffect(followOtherWindows, []);
  return (
    <div className={styles.switches}>
      <Segmented label="Units" labelSpokenOnly segments={unitSegments} value={units} onChange={setUnits} />
      <Segmented label="Theme" labelSpokenOnly segments={themeSegments} value={theme} onChange={setTheme} />
    </div>
  );
}
