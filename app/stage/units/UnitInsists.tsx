'use client';

import { useMemo } from 'react';
import { printPercent } from '@/lib/quantity/percent';
import { shownAt } from '@/lib/rules/unit/shown';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { Icon } from '../../parts/Icon';
import { usePreferences } from '../../parts/preferences';
import { chosenWatch } from '../../pictures/scene-watches';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';
import { DeskWhy } from '../why/DeskWhy';
import { AskHere } from './AskHere';
import styles from './units.module.css';

/** What the chosen unit would insist on at the cursor: its alarms first, then what it holds back. */
export function UnitInsists() {
  const watch = useDeskOncePainted(chosenWatch);
  const unit = useDeskOncePainted((state) => (state.scene.setups[state.unit] ? state.unit : 0));
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const shown = useMemo(() => shownAt(watch, sample, units), [watch, sample, units]);
  return (
    <>
      {shown.alarms.map((alarm) => (
        <p key={alarm.kind} className={styles.alarm}>
          <Icon name="caution" /> {alarm.text}
        </p>
      ))}
      {shown.mode === 'locked out' && (
        <p className={styles.alarm}>
          <Icon name="caution" /> Locked: depth and time only, for {unitSayings(shown, units).locked.text} more.
        </p>
      )}
      {shown.mode === 'gauge' && <p>{watch.setup.name} is in gauge mode: it works nothing out.</p>}
      {shown.tightenedHigh !== null && (
        <p className={styles.alarm}>
          <span>The unit has drawn its limits in: a high gradient factor of {printPercent(shown.tightenedHigh)}.</span>
          <DeskWhy small unit={unit} reading="tightened-limits" about="these limits" />
        </p>
      )}
      <AskHere alarms={shown.alarms} />
    </>
  );
}
