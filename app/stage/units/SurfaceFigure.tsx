'use client';

import { useMemo, useState } from 'react';
import { AIR } from '@/lib/physics/gas';
import { parseAltitude, printAltitude } from '@/lib/quantity/altitude';
import { parseDepth, sayDepth } from '@/lib/quantity/depth';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { printHours } from '@/lib/quantity/duration';
import { afterDiveAt, type AfterDive } from '@/lib/rules/surface/after-dive';
import { explainAltitudeWait } from '@/lib/rules/surface/altitude-wait';
import { printAs } from '@/lib/sayings/measures';
import { printPercent } from '@/lib/quantity/percent';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { chosenWatch } from '../../pictures/scene-watches';
import styles from './units.module.css';

/** The surface interval: what has washed out, what a next dive would be given, and how long until flying or driving up. */
export function SurfaceFigure() {
  const watch = useDesk(chosenWatch);
  const sample = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const [typedNext, setNext] = useState<string>();
  const [typedDrive, setDrive] = useState<string>();
  const metric = units === 'metric';
  // Until something is typed, round figures of the units chosen.
  const next = typedNext ?? (metric ? '18 m' : '60 ft');
  const drive = typedDrive ?? (metric ? '700 m' : '2000 ft');
  const depth = parseDepth(next);
  const altitude = parseAltitude(drive);
  const surfaced = lastSurfaced(watch.timeline.depthM, sample);
  const after = useMemo(
    () =>
      afterDiveAt(watch, surfaced, {
        ...(depth.ok && depth.value > 0 && { next: { depthM: depth.value, gas: AIR } }),
        ...(altitude.ok && { driveToM: altitude.value }),
      }),
    // The parsed boxes are new objects each time; their texts are what changes.
    // oxlint-disable-next-line react/exhaustive-deps
    [watch, surfaced, next, drive],
  );

  return (
    <PictureFrame
      id="surface"
      title="After the dive"
      sentence={
        after
          ? `At the surface for ${printHours(after.sinceSurfacedS)}: ${printAs('noFlyH', after.flying.hoursLeft, units)} until flying, by the ${after.flying.longer === 'model' ? 'model' : 'published guideline'}.`
          : 'Move the time cursor past the end of a dive to see what follows it.'
      }
      columns={[
        { heading: 'Compartment', cell: (row: AfterDive['washout'][number]) => row.compartment },
        { heading: 'Excess on surfacing', numeric: true, cell: (row) => sayExcess(row.excessThenBar, units) },
        { heading: 'Excess now', numeric: true, cell: (row) => sayExcess(row.excessNowBar, units) },
        {
          heading: 'Gone',
          numeric: true,
          cell: (row) => (row.gone === null ? '–' : printPercent(row.gone)),
        },
      ]}
      rows={() => after?.washout ?? []}
    >
      <div className={styles.adders}>
        <Field
          label="A next dive to"
          value={next}
          onChange={(event) => setNext(event.target.value)}
          error={depth.ok ? undefined : `${depth.what} ${depth.mend}`}
        />
        <Field
          label="A drive up to"
          value={drive}
          onChange={(event) => setDrive(event.target.value)}
          error={altitude.ok ? undefined : `${altitude.what} ${altitude.mend}`}
        />
      </div>
      {after && (
        <div className={styles.layers}>
          <section className={styles.layer}>
            <h3>Flying, in a cabin at {printAltitude(after.flying.altitudeM, units)}</h3>
            {explainAltitudeWait(after.flying, units).map((line) => (
              <p key={line}>{line}</p>
            ))}
          </section>
          {after.drive && (
            <section className={styles.layer}>
              <h3>Driving up to {printAltitude(after.drive.altitudeM, units)}</h3>
              {explainAltitudeWait(after.drive, units).map((line) => (
                <p key={line}>{line}</p>
              ))}
            </section>
          )}
          <section className={styles.layer}>
            <h3>Desaturated</h3>
            <p>
              {after.desaturation.leader === 0
                ? 'No compartment holds more than at rest.'
                : `In ${printAs('desaturationH', after.desaturation.minutes / 60, units)} the last compartment, ${after.desaturation.leader}, holds no more than at rest, to ${metric ? '0.01 bar' : '0.1 psi'}.`}
            </p>
          </section>
          {after.recovery && depth.ok && (
            <section className={styles.layer}>
              <h3>A next dive to {sayDepth(depth.value, units)} on air</h3>
              <p>
                Down again now: {printAs('noStopMin', after.recovery.nowMin, units)} without stops, against{' '}
                {printAs('noStopMin', after.recovery.freshMin, units)} for a rested diver. It is within a minute of that
                after {printHours(after.recovery.recoveredAfterMin * 60, 'up')} more at the surface.
              </p>
            </section>
          )}
        </div>
      )}
    </PictureFrame>
  );
}

/** A small pressure: to a thousandth of a bar or a hundredth of a psi. */
function sayExcess(excessBar: number, units: UnitSystem): string {
  return units === 'metric' ? `${excessBar.toFixed(3)} bar` : `${(excessBar / BAR_PER_PSI).toFixed(2)} psi`;
}

/** The sample itself at the surface; under water, the end of the day if that is at the surface. */
function lastSurfaced(depthM: Float64Array, sample: number): number {
  return depthM[sample]! > 0 ? depthM.length - 1 : sample;
}
