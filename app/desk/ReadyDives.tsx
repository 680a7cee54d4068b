'use client';

import { memo, useCallback, useDeferredValue, useEffect, useMemo } from 'react';
import { isScenario, scenarioIn } from '@/content/scenarios/scenario-in';
import { scenarios } from '@/content/scenarios/scenarios';
import { writeInUnits } from '@/lib/dive/edit/write-in-units';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { usePreferences } from '../parts/preferences';
import { useDesk, useDeskStore } from '../stage/desk-context';

const OWN = { value: 'own', label: 'Your own' };

/** Dives to begin with; kept apart, since it stays the same while a script is changed. */
export const ReadyDives = memo(function ReadyDives() {
  const units = usePreferences((state) => state.units);
  const scenario = useDesk((state) => scenarios.find((one) => isScenario(one, state.script)));
  const change = useDesk((state) => state.change);
  const store = useDeskStore();
  // A ready dive that nobody has touched follows the units.
  useEffect(() => {
    const { script, past } = store.getState();
    const ready = scenarios.find((one) => isScenario(one, script));
    if (ready && past.length === 0) change({ script: scenarioIn(ready, units).script });
  }, [store, change, units]);
  const own = scenario === undefined;
  const options = useMemo(() => {
    const ready = scenarios.map((one) => ({ value: one.id, label: scenarioIn(one, units).title }));
    return own ? [OWN, ...ready] : ready;
  }, [own, units]);
  const choose = useCallback(
    (chosen: string) => {
      const next = scenarios.find((one) => one.id === chosen);
      if (!next) return;
      change({ script: scenarioIn(next, units).script });
      if (!store.getState().run) store.getState().showStill(next.stillS);
    },
    [change, units, store],
  );
  return (
    <Choice
      label="Ready dives"
      value={scenario?.id ?? OWN.value}
      options={options}
      onChange={choose}
      hint={scenario && scenarioIn(scenario, units).shows}
    />
  );
});

/** Writes the script in the units chosen, where it is in the others. */
export function WriteInUnits() {
  const units = usePreferences((state) => state.units);
  const script = useDeferredValue(useDesk((state) => (state.errors.length > 0 ? undefined : state.script)));
  const change = useDesk((state) => state.change);
  const written = useMemo(() => (script === undefined ? undefined : writeInUnits(script, units)), [script, units]);
  if (written === undefined || written === script) return null;
  return (
    <p>
      <Button kind="quiet" onClick={() => change({ script: written })}>
        Write it in {units === 'imperial' ? 'feet' : 'metres'}
      </Button>
    </p>
  );
}
