'use client';

import { useMemo, useState } from 'react';
import { AIR } from '@/lib/physics/gas';
import { parseAltitude, printAltitude } from '@/lib/quantity/altitude';
import { parseDepth, sayDepth } from '@/lib/quantity/depth';
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
  const [next, setNext] = useState('18 m');
  const [drive, setDrive] = useState('700 m');
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
    // eslint-disable-next-line react-hooks/exhaustive-deps
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
        { heading: 'Excess on surfacing, bar', numeric: true, cell: (row) => row.excessThenBar.toFixed(3) },
        { heading: 'Excess now, bar', numeric: true, cell: (row) => row.excessNowBar.toFixed(3) },
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
                : `In ${printAs('desaturationH', after.desaturation.minutes / 60, units)} the last compartment, ${after.desaturation.leader}, holds no more than at rest, to 0.01 bar.`}
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

/** The sample itself at the surface; under water, the end of the day if that is at the surface. */
function lastSurfaced(depthM: Float64Array, sample: number): number {
  return depthM[sample]! > 0 ? depthM.length - 1 : sample;
}
