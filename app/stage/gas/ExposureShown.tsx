'use client';

import { exposureSayings } from '@/lib/sayings/exposure-readings';
import { NOT_SHOWN } from '@/lib/sayings/saying';
import { usePreferences } from '../../parts/preferences';
import { Reading } from '../../parts/Reading';
import { useCovering } from '../covering';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';
import type { ReadingId } from '../reading-ids';
import { tileOf } from '../tile-of';
import { DeskWhy } from '../why/DeskWhy';
import { densitiesOf, oxygenOf, supplyOf } from '../../pictures/scene-exposure';
import styles from '../../pictures/gas/exposure.module.css';

/** Oxygen, density and the cylinder in use at the cursor. */
export function ExposureShown({ only }: { only?: readonly ReadingId[] | undefined }) {
  const cover = useCovering(only);
  const scene = useDeskOncePainted((state) => state.scene);
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const said = exposureSayings(
    {
      timeline: scene.timeline,
      sample,
      oxygen: oxygenOf(scene),
      densitiesGL: densitiesOf(scene),
      supply: supplyOf(scene),
    },
    units,
  );
  return (
    <div className={only ? styles.among : styles.gasReadingsGrid}>
      <Reading
        {...cover('oxygen-pressure')}
        {...tileOf(said['oxygen-pressure'])}
        why={<DeskWhy reading="oxygen-pressure" about="this oxygen pressure" />}
        roomFor={4}
      />
      <Reading
        {...cover('oxygen-single')}
        {...tileOf(said['oxygen-single'])}
        why={<DeskWhy reading="oxygen-single" about="this part of the single-exposure limit" />}
        roomFor={3}
      />
      <Reading
        {...cover('oxygen-daily')}
        {...tileOf(said['oxygen-daily'])}
        why={<DeskWhy reading="oxygen-daily" about="this part of the 24-hour limit" />}
        roomFor={3}
      />
      <Reading
        {...cover('oxygen-pulmonary')}
        {...tileOf(said['oxygen-pulmonary'])}
        why={<DeskWhy reading="oxygen-pulmonary" about="this pulmonary dose" />}
        roomFor={4}
      />
      <Reading
        {...cover('gas-density')}
        {...tileOf(said['gas-density'])}
        why={<DeskWhy reading="gas-density" about="this gas density" />}
        roomFor={4}
      />
      {said.cylinder.value !== NOT_SHOWN && <Reading {...cover('cylinder')} {...tileOf(said.cylinder)} roomFor={4} />}
    </div>
  );
}
