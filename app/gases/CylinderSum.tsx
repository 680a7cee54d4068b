'use client';

import { useState } from 'react';
import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { readSize } from '@/lib/dive/script/settings/cylinder-text';
import { loggedConsumptionLMin } from '@/lib/exposure/consumption';
import { compressibility } from '@/lib/exposure/compressibility';
import { ambientBarAt } from '@/lib/exposure/gas-depths';
import { absoluteOfGauge, IDEAL_GAS, REAL_GAS } from '@/lib/exposure/gas-law';
import { atmosphereBar, SEA_LEVEL_BAR } from '@/lib/physics/atmosphere';
import { AIR, gasName, type Gas } from '@/lib/physics/gas';
import { barPerMetre } from '@/lib/physics/water';
import { printBreathingRate } from '@/lib/quantity/breathing-rate';
import { writeTime } from '@/lib/quantity/duration';
import { atMost, fixed } from '@/lib/quantity/number';
import { accepted, type Parsed } from '@/lib/quantity/parsed';
import { BAR_PER_PSI, printCylinderPressure } from '@/lib/quantity/pressure';
import { parseTime } from '@/lib/quantity/time';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { LITRES_PER_CUBIC_FOOT, printVolume } from '@/lib/quantity/volume';
import { useWidth } from '../parts/use-width';
import { ChartFrame } from '../parts/ChartFrame';
import { usePreferences } from '../parts/preferences';
import { TypedValue } from '../parts/TypedValue';
import { CylinderPicture, MOST_SHOWN_BAR } from './CylinderPicture';
import { useSite } from './site-store';
import styles from './gases.module.css';
import { TypedDepth } from '../parts/TypedDepth';
import { parseGauge } from '@/lib/dive/fill-text';

/** What a diver breathes, from a line of a logbook, and what a cylinder holds: as an ideal gas and as a real one. */
export function CylinderSum() {
  const units = usePreferences((state) => state.units);
  const { water, altitudeM } = useSite();
  const [waterL, setWaterL] = useState(12);
  const [gas, setGas] = useState<Gas>(AIR);
  const [startBar, setStartBar] = useState(230);
  const [endBar, setEndBar] = useState(60);
  const [meanM, setMeanM] = useState(15);
  const [timeS, setTimeS] = useState(45 * 60);
  const { ref, width } = useWidth<HTMLDivElement>(480);
  const site = { surfaceBar: atmosphereBar(altitudeM), barPerMetre: barPerMetre(water) };
  const vessel = { waterL, gas };
  const logged = {
    ...site,
    legs: [{ startS: 0, endS: timeS, fromM: meanM, toM: meanM, gas: 0, step: 0, diveNumber: 0, interval: false }],
  };
  const rate = (law: typeof IDEAL_GAS) => loggedConsumptionLMin(vessel, { startBar, endBar }, logged, { law });
  const held = (law: typeof IDEAL_GAS, bar: number) => law.contentL(vessel, absoluteOfGauge(bar));
  const makesSense = endBar <= startBar && timeS > 0;
  const bar = (value: number) => printCylinderPressure(value, units);
  const lost = held(REAL_GAS, startBar) - held(IDEAL_GAS, startBar);

  return (
    <div className={styles.pair}>
      <div className={styles.board}>
        <div className={styles.controls} role="group" aria-label="From a logbook">
          <TypedValue
            label="Cylinder"
            shown={sayCylinder(waterL, units)}
            parse={parseCylinder}
            live
            onValue={setWaterL}
            hint="Water volume, or 80 cu ft at 3000 psi"
          />
          <TypedValue label="Gas in it" shown={writeGas(gas)} parse={parseGas} live onValue={setGas} />
          <TypedValue label="Gauge at the start" shown={bar(startBar)} parse={parseGauge} live onValue={setStartBar} />
          <TypedValue label="Gauge at the end" shown={bar(endBar)} parse={parseGauge} live onValue={setEndBar} />
          <TypedDepth label="Average depth" depthM={meanM} onDepth={setMeanM} />
          <TypedValue label="Time under water" shown={writeTime(timeS)} parse={parseTime} live onValue={setTimeS} />
        </div>
        {makesSense ? (
          <div aria-live="polite" className={styles.text}>
            <p>
              You breathed <b>{printBreathingRate(rate(IDEAL_GAS), units)}</b> at the surface as an ideal gas,{' '}
              <b>{printBreathingRate(rate(REAL_GAS), units)}</b> as a real one.
            </p>
            <p>
              Ideal: {printVolume(held(IDEAL_GAS, startBar) - held(IDEAL_GAS, endBar), units)} left the cylinder, over{' '}
              {fixed(ambientBarAt(meanM, site), 2)} bar for {writeTime(timeS)}. The average depth is enough for this,
              since gas is used in proportion to the pressure.
            </p>
          </div>
        ) : (
          <p role="alert" className={styles.text}>
            {timeS > 0
              ? 'The gauge shows more at the end than at the start: exchange the two, or mend one.'
              : 'No time passed: write how long you were under water.'}
          </p>
        )}
      </div>
      <ChartFrame
        headingLevel={3}
        title="What the cylinder holds"
        sentence={`At ${bar(startBar)} it holds ${printVolume(held(IDEAL_GAS, startBar), units)} of ${gasName(gas)} as an ideal gas and ${printVolume(held(REAL_GAS, startBar), units)} as a real one: ${printVolume(Math.abs(lost), units)} ${lost < 0 ? 'less' : 'more'}.`}
        columns={[
          { heading: 'Gauge', cell: (value: number) => bar(value) },
          { heading: 'Ideal', numeric: true, cell: (value) => printVolume(held(IDEAL_GAS, value), units) },
          { heading: 'Real', numeric: true, cell: (value) => printVolume(held(REAL_GAS, value), units) },
          { heading: 'Z', numeric: true, cell: (value) => fixed(compressibility(gas, absoluteOfGauge(value)), 3) },
        ]}
        rows={Array.from({ length: 7 }, (_, i) => (i * MOST_SHOWN_BAR) / 6)}
        source="Compressibility at 20 °C from reference equations, by mean of the pure gases"
      >
        <div ref={ref}>
          <CylinderPicture waterL={waterL} gas={gas} startBar={startBar} width={width} />
        </div>
        <p className={styles.legend}>
          <span className={styles.idealKey} /> ideal, volume times pressure <span className={styles.realKey} /> real
        </p>
      </ChartFrame>
    </div>
  );
}

function parseCylinder(text: string): Parsed<number> {
  const read = readSize(text);
  return read.ok ? accepted(read.value.waterL) : read;
}

const STAMPED_PSI = 3000;

/** A cylinder as it is stamped: its water volume, or the gas it holds at a working pressure. */
function sayCylinder(waterL: number, units: UnitSystem): string {
  if (units === 'metric') return `${atMost(waterL, 1)} L`;
  const heldL = (waterL * STAMPED_PSI * BAR_PER_PSI) / SEA_LEVEL_BAR;
  return `${atMost(heldL / LITRES_PER_CUBIC_FOOT, 1)} cu ft at ${STAMPED_PSI} psi`;
}
