'use client';

import { memo } from 'react';
import { isScenario, scenarioIn } from '@/content/scenarios/scenario-in';
import { scenarios } from '@/content/scenarios/scenarios';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskStore } from '../desk-context';
import { sayOverlaid } from '../../pictures/profile/overlaid-dive';
import { useOverlay } from './use-overlay';
import styles from '../../pictures/profile/overlay.module.css';

const NONE = 'none';
const AS_NOW = 'as now';
const KEPT = 'kept';

/** Lays a second dive over the first: a ready one, or this one as it stands before the next change. */
export const OverlayChooser = memo(function OverlayChooser() {
  const store = useDeskStore();
  const overlay = useDesk((state) => state.overlay);
  const units = usePreferences((state) => state.units);
  const ready = scenarios.find((scenario) => isScenario(scenario, overlay?.script));
  const choose = (chosen: string) => {
    const { script, change } = store.getState();
    const scenario = scenarios.find(({ id }) => id === chosen);
    if (chosen === NONE) change({ overlay: undefined });
    else if (chosen === AS_NOW) change({ overlay: { title: 'The dive as it was', script } });
    else if (scenario) {
      const { title, script: other } = scenarioIn(scenario, units);
      change({ overlay: { title, script: other } });
    }
  };
  return (
    <label className={styles.chooser}>
      Second dive
      <select value={!overlay ? NONE : (ready?.id ?? KEPT)} onChange={(event) => choose(event.target.value)}>
        <option value={NONE}>none</option>
        {overlay && !ready && <option value={KEPT}>{overlay.title}</option>}
        <option value={AS_NOW}>this one as it is now</option>
        {scenarios.map((scenario) => (
          <option key={scenario.id} value={scenario.id}>
            {scenarioIn(scenario, units).title}
          </option>
        ))}
      </select>
    </label>
  );
});

/** How the second dive differs from the first, where there is one. */
export function OverlaySentence() {
  const scene = useDesk((state) => state.scene);
  const units = usePreferences((state) => state.units);
  const other = useOverlay();
  return other ? <p className={styles.sentence}>{sayOverlaid(other, scene, units)}</p> : null;
}
