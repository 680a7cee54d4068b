'use client';

import { useState } from 'react';
import { gasDensityGL } from '@/lib/exposure/gas-density';
import { ambientBarAt, bestMix, equivalentNarcoticDepthM, gasModM, hypoxicAboveM } from '@/lib/exposure/gas-depths';
import { atmosphereBar } from '@/lib/physics/atmosphere';
import { WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { barPerMetre } from '@/lib/physics/water';
import { sayDepth } from '@/lib/quantity/depth';
import { atMost, fixed } from '@/lib/quantity/number';
import { refused, type Parsed } from '@/lib/quantity/parsed';
import { parsePressure } from '@/lib/quantity/pressure';
import { printPercent } from '@/lib/quantity/percent';
import { usePreferences } from '../parts/preferences';
import { Reading } from '../parts/Reading';
import { TypedValue } from '../parts/TypedValue';
import { useSite } from './site-store';
import styles from './gases.module.css';
import { TypedDepth } from '../parts/TypedDepth';

const PO2_RANGE_BAR = [0.4, 2] as const;

/** The gas richest in oxygen for a depth, with the least helium that keeps narcosis as wished, and how it comes about. */
export function MixFinder() {
  const units = usePreferences((state) => state.units);
  const { water, altitudeM, narcotic } = useSite();
  const [depthM, setDepthM] = useState(60);
  const [limitBar, setLimitBar] = useState<number>(WORKING_PO2_BAR);
  const [asAirAtM, setAsAirAtM] = useState(30);
  const [narrowed, setNarrowed] = useState(true);
  const site = { surfaceBar: atmosphereBar(altitudeM), barPerMetre: barPerMetre(water) };
  const ambientBar = ambientBarAt(depthM, site);
  const gas = bestMix(depthM, { pO2LimitBar: limitBar, ...(narrowed && { narcosis: { asAirAtM, narcotic } }) }, site);
  const enoughBelowM = hypoxicAboveM(gas, site);

  return (
    <div className={styles.board}>
      <div className={styles.controls}>
        <TypedDepth label="Depth to breathe it at" depthM={depthM} onDepth={setDepthM} />
        <TypedValue
          label="Oxygen at most"
          shown={`${atMost(limitBar, 2)} bar`}
          parse={parseLimit}
          live
          onValue={setLimitBar}
        />
        <label className={styles.check}>
          <input type="checkbox" checked={narrowed} onChange={(event) => setNarrowed(event.target.checked)} />
          Narcosis at most as on air at
        </label>
        {narrowed && <TypedDepth label="Depth on air" depthM={asAirAtM} onDepth={setAsAirAtM} />}
      </div>
      <div className={styles.readings} aria-live="polite">
        <Reading
          label="Oxygen"
          value={fixed(gas.o2 * 100, 1)}
          unit="%"
          roomFor={5}
          note={`${atMost(limitBar, 2)} bar ÷ ${fixed(ambientBar, 2)} bar at ${sayDepth(depthM, units)}`}
        />
        <Reading
          label="Helium"
          value={fixed(gas.he * 100, 1)}
          unit="%"
          roomFor={5}
          note={gas.he > 0 ? 'the least that keeps narcosis as wished' : 'none is needed'}
        />
        <Reading
          label="Nitrogen"
          value={fixed((1 - gas.o2 - gas.he) * 100, 1)}
          unit="%"
          roomFor={5}
          note="what is left"
        />
        <Reading
          label="Density there"
          value={fixed(gasDensityGL(gas, ambientBar), 1)}
          unit="g/L"
          roomFor={4}
          note="5.2 recommended, 6.2 at most"
        />
      </div>
      <p className={styles.text}>
        {printPercent(gas.o2, 1)} oxygen reaches {atMost(limitBar, 2)} bar at{' '}
        {sayDepth(gasModM(gas, limitBar, site), units)}
        {gas.he > 0 && (
          <>
            ; with {printPercent(gas.he, 1)} helium it is as narcotic there as air at{' '}
            {sayDepth(Math.max(0, equivalentNarcoticDepthM(gas, depthM, narcotic, site)), units)}
          </>
        )}
        .{' '}
        {enoughBelowM > 0
          ? `It holds less oxygen than is customary above ${sayDepth(enoughBelowM, units)}: you would need another gas to get there.`
          : 'It holds enough oxygen to be breathed at the surface.'}{' '}
        A blend is never exactly what was asked for: whoever breathes a gas analyses it.
      </p>
    </div>
  );
}

function parseLimit(text: string): Parsed<number> {
  const read = parsePressure(text);
  const [least, most] = PO2_RANGE_BAR;
  if (read.ok && (read.value < least || read.value > most))
    return refused(`“${text.trim()}” is no limit anyone teaches.`, `Write ${least} bar to ${most} bar.`);
  return read;
}
