'use client';

import { useMemo } from 'react';
import type { Leg } from '@/lib/dive/legs';
import { SURFACE_HALF_TIME_MIN, type OxygenAdded } from '@/lib/exposure/oxygen-exposure';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { printDaySpan, sayAtDayClock } from '@/lib/dive/day-clock';
import { fixed } from '@/lib/quantity/number';
import { printPercent } from '@/lib/quantity/percent';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import type { Scene } from '../../pictures/scene';
import { PictureFrame } from '../figures/PictureFrame';
import { usePicture } from '../figures/use-picture';
import { OxygenPicture } from '../../pictures/gas/OxygenPicture';
import { oxygenOf } from '../../pictures/scene-exposure';
import shared from '../../pictures/pictures.module.css';
import { DeepCaution } from './DeepCaution';
import styles from '../../pictures/gas/exposure.module.css';

interface AddedRow extends OxygenAdded {
  readonly title: string;
}

/** Oxygen over the dive, per leg and across the day. */
export function OxygenFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 350 : 370));
  const { scene, sample, units } = picture;
  const oxygen = oxygenOf(scene);
  const table = useMemo(
    () => ({ columns: legColumns(scene, units), rows: () => scene.timeline.legs.map((_, index) => index) }),
    [scene, units],
  );
  const dives = oxygen.dives.map((dive, index): AddedRow => ({ ...dive, title: `Dive ${index + 1}` }));
  return (
    <PictureFrame id="oxygen" title="Oxygen" sentence={sentenceAt(scene, sample)} {...table}>
      <div className={shared.fitted}>
        <div ref={ref} className={shared.canvas}>
          <OxygenPicture {...picture} />
        </div>
        <p className={styles.legend}>
          <span className={styles.mainKey} /> single exposure <span className={styles.secondKey} /> the 24 hours before
        </p>
      </div>
      <DataTable caption="What each dive adds" captionShown columns={ADDED_COLUMNS} rows={dives} />
      <p className={styles.remark}>
        Fractions of the NOAA limits, straight between its rows. At the surface between dives the single-exposure
        fraction is taken to halve every {SURFACE_HALF_TIME_MIN} min: common practice, no source. The table behind the
        picture has every leg.
        {oxygen.beyondLimits &&
          ' Oxygen goes beyond the last row of the limits here, so from there on the fractions are a guess.'}
      </p>
      <DeepCaution under="oxygen" />
    </PictureFrame>
  );
}

const ADDED_COLUMNS: readonly TableColumn<AddedRow>[] = [
  { heading: 'Dive', cell: ({ title }) => title },
  { heading: 'Highest oxygen, bar', numeric: true, cell: ({ peakPO2Bar }) => fixed(peakPO2Bar, 2) },
  { heading: 'Single exposure', numeric: true, cell: ({ single }) => printPercent(single, 1) },
  { heading: '24 hours', numeric: true, cell: ({ daily }) => printPercent(daily, 1) },
  { heading: 'Lung units', numeric: true, cell: ({ pulmonaryUnits }) => fixed(pulmonaryUnits, 0) },
];

function sentenceAt(scene: Scene, sample: number): string {
  const { pO2Bar, singleFraction, dailyFraction, pulmonaryUnits } = oxygenOf(scene);
  return (
    `${sayAtDayClock(scene.timeline, scene.timeline.timeS[sample]!)} you breathe oxygen at ${fixed(pO2Bar[sample]!, 2)} bar. ` +
    `${printPercent(singleFraction[sample]!)} of a single exposure and ${printPercent(dailyFraction[sample]!)} of a day’s are used; ${fixed(pulmonaryUnits[sample]!, 0)} lung units.`
  );
}

function legColumns(scene: Scene, units: UnitSystem): TableColumn<number>[] {
  const { legs, gases } = scene.timeline;
  const oxygen = oxygenOf(scene);
  return [
    { heading: 'Leg', cell: (index) => printDaySpan({ legs }, legs[index]!.startS, legs[index]!.endS) },
    { heading: 'Depth', cell: (index) => sayLeg(legs[index]!, units) },
    { heading: 'Gas', cell: (index) => gasName(gases[legs[index]!.gas]!) },
    { heading: 'Highest oxygen, bar', numeric: true, cell: (index) => fixed(oxygen.legs[index]!.peakPO2Bar, 2) },
    { heading: 'Single exposure', numeric: true, cell: (index) => printPercent(oxygen.legs[index]!.single, 1) },
    { heading: '24 hours', numeric: true, cell: (index) => printPercent(oxygen.legs[index]!.daily, 1) },
    { heading: 'Lung units', numeric: true, cell: (index) => fixed(oxygen.legs[index]!.pulmonaryUnits, 1) },
  ];
}

function sayLeg({ fromM, toM, interval }: Leg, units: UnitSystem): string {
  if (interval) return 'at the surface';
  return fromM === toM ? sayDepth(toM, units) : `${sayDepth(fromM, units)} to ${sayDepth(toM, units)}`;
}
