'use client';

import { useMemo, useState } from 'react';
import { AIR } from '@/lib/physics/gas';
import { parseAltitude, printAltitude } from '@/lib/quantity/altitude';
import { parseDepth, sayDepth } from '@/lib/quantity/depth';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { printHours } from '@/lib/quantity/duration';
import { afterDiveAt, type AfterDive } from '@/lib/rules/surface/after-dive';
import { explainAltitudeWait, type AltitudeWait } from '@/lib/rules/surface/altitude-wait';
import { noStopAfter } from '@/lib/rules/surface/no-stop-recovery';
import { printAs } from '@/lib/sayings/measures';
import { printPercent } from '@/lib/quantity/percent';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { usePicture } from '../figures/use-picture';
import { AfterDivePicture, afterDiveHeight, type LetsGo } from '../../pictures/units/AfterDivePicture';
import { chosenWatch } from '../../pictures/scene-watches';
import shared from '../../pictures/pictures.module.css';
import styles from './units.module.css';

/** The surface interval: what has washed out, what a next dive would be given, and how long until flying or driving up. */
export function SurfaceFigure() {
  const watch = useDeskOncePainted(chosenWatch);
  const sample = useDeskOncePainted(cursorSample);
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

  const waits = after ? waitsOf(after, units) : [];
  const comesBack = useMemo(() => {
    if (!after?.recovery || !depth.ok) return undefined;
    const { freshMin, nowMin, recoveredAfterMin } = after.recovery;
    const again = noStopAfter(watch.timeline, watch.figures.limits, surfaced, { depthM: depth.value, gas: AIR });
    return {
      name: `No-stop time of a next dive to ${sayDepth(depth.value, units)} on air`,
      minutesAfter: (minutes: number) => again(minutes).minutes,
      nowMin,
      saysNow: nowMin > 0 && nowMin < 1 ? 'under 1 min' : printAs('noStopLimitMin', nowMin, units),
      freshMin,
      saysFresh: printAs('noStopLimitMin', freshMin, units),
      recoveredAfterMin,
    };
    // As above.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [after, watch, surfaced, units]);
  const { ref, width } = usePicture(() => afterDiveHeight(waits.length, comesBack !== undefined));
  const rows = [
    ...waits.map(({ name, says, leader }) => ({ name, says: leader ? `${says}, compartment ${leader}` : says })),
    ...(comesBack
      ? [
          { name: comesBack.name, says: `${comesBack.saysNow} now, ${comesBack.saysFresh} for a rested diver` },
          { name: 'As if rested, within a minute', says: sayWaiting(comesBack.recoveredAfterMin / 60) },
        ]
      : []),
  ];

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
        { heading: 'What is waited for', cell: (row: (typeof rows)[number]) => row.name },
        { heading: 'From now', cell: (row) => row.says },
      ]}
      rows={() => rows}
    >
      <div className={styles.pair}>
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
        <>
          <div ref={ref} className={shared.ownHeight}>
            <AfterDivePicture
              width={width}
              from={`from now on, ${printHours(after.sinceSurfacedS)} after surfacing`}
              waits={waits}
              next={comesBack}
            />
          </div>
          <Disclosure summary="The reasons, and what has washed out">
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
                <p>No compartment holds more than at rest, to {metric ? '0.01 bar' : '0.1 psi'}.</p>
              </section>
            </div>
            <DataTable
              caption="What has washed out"
              captionShown
              columns={[
                { heading: 'Compartment', cell: (row: AfterDive['washout'][number]) => row.compartment },
                { heading: 'Excess on surfacing', numeric: true, cell: (row) => sayExcess(row.excessThenBar, units) },
                { heading: 'Excess now', numeric: true, cell: (row) => sayExcess(row.excessNowBar, units) },
                { heading: 'Gone', numeric: true, cell: (row) => (row.gone === null ? '–' : printPercent(row.gone)) },
              ]}
              rows={after.washout}
            />
          </Disclosure>
        </>
      )}
    </PictureFrame>
  );
}

/** What has to be waited for after a dive, each with who holds the diver back. */
function waitsOf({ flying, drive, desaturation, sinceSurfacedS }: AfterDive, units: UnitSystem): LetsGo[] {
  const wait = (name: string, by: LetsGo['by'], hours: number, leader?: number): LetsGo => ({
    name,
    by,
    hours,
    says: sayWaiting(hours),
    ...(leader && { leader }),
  });
  const upThere = ({ model, guideline }: AltitudeWait, name: string) => [
    wait(`${name}, by the model`, 'model', model.minutes / 60, model.leader),
    ...(guideline ? [wait(`${name}, by the guideline`, 'rule', guideline.hours - sinceSurfacedS / 3600)] : []),
  ];
  return [
    ...upThere(flying, 'Flying'),
    ...(drive ? upThere(drive, `Drive to ${printAltitude(drive.altitudeM, units)}`) : []),
    wait('Desaturated', 'gas', desaturation.minutes / 60, desaturation.leader),
  ];
}

function sayWaiting(hours: number): string {
  if (hours <= 0) return 'no more waiting';
  return Number.isFinite(hours) ? printHours(hours * 3600, 'up') : 'longer than a week';
}

/** A small pressure: to a thousandth of a bar or a hundredth of a psi. */
function sayExcess(excessBar: number, units: UnitSystem): string {
  return units === 'metric' ? `${excessBar.toFixed(3)} bar` : `${(excessBar / BAR_PER_PSI).toFixed(2)} psi`;
}

/** The sample itself at the surface; under water, the end of the day if that is at the surface. */
function lastSurfaced(depthM: Float64Array, sample: number): number {
  return depthM[sample]! > 0 ? depthM.length - 1 : sample;
}
