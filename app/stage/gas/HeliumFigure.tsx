'use client';

import { useMemo } from 'react';
import { ISOBARIC_CAUTION, isobaricSwitches, sayIsobaricSwitch } from '@/lib/exposure/isobaric-switch';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import { fixed } from '@/lib/quantity/number';
import { printPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { TableColumn } from '../../parts/DataTable';
import type { Scene } from '../../pictures/scene';
import { pressureUnit } from '../../pictures/axes/pressure-axis';
import { CompartmentChoice, useCompartment } from '../figures/CompartmentChoice';
import { PictureFrame } from '../figures/PictureFrame';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from '../figures/use-picture';
import { HeliumPicture } from '../../pictures/gas/HeliumPicture';
import shared from '../../pictures/pictures.module.css';
import { DeepCaution } from './DeepCaution';
import styles from '../../pictures/gas/exposure.module.css';

/** Helium and nitrogen in one compartment, and the switches the model has something to say about. */
export function HeliumFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 280 : 310));
  const { scene, sample, units } = picture;
  const compartment = useCompartment(scene, sample) - 1;
  const { timeline } = scene;
  const switches = useMemo(() => isobaricSwitches(timeline), [timeline]);
  const table = useMemo(
    () => ({ columns: columnsOf(scene, compartment, units), rows: () => tableSamples(scene.timeline) }),
    [scene, compartment, units],
  );

  return (
    <PictureFrame
      id="helium"
      title="Helium and nitrogen"
      sentence={sentenceAt(scene, sample, compartment, units)}
      {...table}
    >
      <div className={shared.fitted}>
        <CompartmentChoice compartments={timeline.compartments} helium />
        <div ref={ref} className={shared.canvas}>
          <HeliumPicture {...picture} compartment={compartment} switches={switches} />
        </div>
        <p className={styles.legend}>
          <span className={styles.gasMainKey} /> nitrogen in the tissue <span className={styles.gasSecondKey} /> helium
          in the tissue <span className={styles.thinKey} /> thin: what is breathed
        </p>
      </div>
      <section className={styles.part}>
        <h3>Switches at one depth</h3>
        {switches.length === 0 ? (
          <p>The model has nothing to say of this dive’s changes of gas.</p>
        ) : (
          <ul className={styles.told}>
            {switches.map((one) => (
              <li key={one.timeS}>{sayIsobaricSwitch(one, timeline, units)}</li>
            ))}
          </ul>
        )}
        <p className={styles.remark}>{ISOBARIC_CAUTION}</p>
      </section>
      <DeepCaution under="helium" />
    </PictureFrame>
  );
}

function sentenceAt({ timeline }: Scene, sample: number, compartment: number, units: UnitSystem): string {
  const at = sample * COMPARTMENTS + compartment;
  const when = sayAtDayClock(timeline, timeline.timeS[sample]!);
  const nitrogen = printPressure(timeline.nitrogenBar[at]!, units);
  if (!timeline.hasHelium)
    return `No helium is breathed on this dive. ${when} compartment ${compartment + 1} holds ${nitrogen} of nitrogen.`;
  const times = fixed(
    timeline.compartments.nitrogenHalfTimeMin[compartment]! / timeline.compartments.heliumHalfTimeMin[compartment]!,
    1,
  );
  return `${when} compartment ${compartment + 1} holds ${nitrogen} of nitrogen and ${printPressure(timeline.heliumBar[at]!, units)} of helium. Helium comes and goes ${times} times as fast.`;
}

function columnsOf({ timeline }: Scene, compartment: number, units: UnitSystem): TableColumn<number>[] {
  const at = (sample: number) => sample * COMPARTMENTS + compartment;
  const unit = pressureUnit(units);
  const print = (bar: number) => fixed(bar / unit.bar, unit.decimals + 1);
  return [
    { heading: 'Time', cell: (sample) => printDayClock(timeline, timeline.timeS[sample]!) },
    { heading: `Nitrogen, ${unit.name}`, numeric: true, cell: (sample) => print(timeline.nitrogenBar[at(sample)]!) },
    { heading: `Helium, ${unit.name}`, numeric: true, cell: (sample) => print(timeline.heliumBar[at(sample)]!) },
    {
      heading: `Together, ${unit.name}`,
      numeric: true,
      cell: (sample) => print(timeline.nitrogenBar[at(sample)]! + timeline.heliumBar[at(sample)]!),
    },
  ];
}
