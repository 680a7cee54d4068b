'use client';

import { useState } from 'react';
import { loggedConsumptionLMin } from '@/lib/exposure/consumption';
import { IDEAL_GAS, REAL_GAS } from '@/lib/exposure/gas-law';
import { gasName, sameGas } from '@/lib/physics/gas';
import { printBreathingRate } from '@/lib/quantity/breathing-rate';
import { atMost } from '@/lib/quantity/number';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';
import { useScriptEdit } from './use-script-edit';
import styles from '../../pictures/gas/exposure.module.css';
import { parseGauge } from '@/lib/dive/fill-text';

/** The consumption of the dive on the desk, if it was really dived, from what the gauge showed at its end. */
export function LoggedRate() {
  const { dive, timeline } = useDeskOncePainted((state) => state.scene);
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const { set } = useScriptEdit();
  const [endBar, setEndBar] = useState(50);
  const { diveNumber } = timeline.legs[timeline.leg[sample]!]!;
  const own = timeline.legs.filter((leg) => leg.diveNumber === diveNumber && !leg.interval);
  const gas = timeline.gases[own[0]!.gas]!;
  const cylinder = dive.settings.supply?.cylinders.find((one) => sameGas(one.gas, gas));
  if (!cylinder || own.some((leg) => leg.gas !== own[0]!.gas)) return null;
  const gauge = { startBar: cylinder.startBar, endBar };
  const [ideal, real] = [IDEAL_GAS, REAL_GAS].map((law) =>
    loggedConsumptionLMin(cylinder, gauge, timeline, { dive: diveNumber, law }),
  );
  const makesSense = Number.isFinite(real) && endBar < cylinder.startBar;
  return (
    <section className={styles.part}>
      <h3>If this dive was logged</h3>
      <p>
        Dive {diveNumber + 1} was breathed from one cylinder of {gasName(gas)}. Say what its gauge showed at the end,
        and the consumption follows from the whole profile.
      </p>
      <div className={styles.buttons}>
        <TypedValue
          label={`Gauge of “${cylinder.name}” at the end`}
          shown={printCylinderPressure(endBar, units)}
          parse={parseGauge}
          live
          onValue={setEndBar}
        />
        {makesSense && (
          <Button onClick={() => set('consumption', `${atMost(real!, 1)} L/min`)}>
            Use {printBreathingRate(real!, units)} in the script
          </Button>
        )}
      </div>
      <p role="status">
        {makesSense
          ? `${printBreathingRate(real!, units)} at the surface as a real gas, ${printBreathingRate(ideal!, units)} as an ideal one.`
          : `The gauge began at ${printCylinderPressure(cylinder.startBar, units)}; at the end it shows less.`}
      </p>
    </section>
  );
}
