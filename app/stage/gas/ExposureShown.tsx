'use client';

import { gasAt } from '@/lib/dive/timeline';
import { densityBand } from '@/lib/exposure/gas-density';
import { gasName, sameGas } from '@/lib/physics/gas';
import { LEAST_PO2_BAR, RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { fixed } from '@/lib/quantity/number';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import { usePreferences } from '../../parts/preferences';
import { Reading } from '../../parts/Reading';
import { useCovering } from '../covering';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import type { ReadingId } from '../reading-ids';
import type { Scene } from '../../pictures/scene';
import { DeskWhy } from '../why/DeskWhy';
import { densitiesOf, oxygenOf, supplyOf } from '../../pictures/scene-exposure';
import styles from '../../pictures/gas/exposure.module.css';

/** Oxygen, density and the cylinder in use at the cursor. */
export function ExposureShown({ only }: { only?: readonly ReadingId[] | undefined }) {
  const cover = useCovering(only);
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const oxygen = oxygenOf(scene);
  const pO2Bar = oxygen.pO2Bar[sample]!;
  const density = densitiesOf(scene)[sample]!;
  const band = densityBand(density);
  const cylinder = cylinderInUse(scene, sample);
  const [pressure, pressureUnit] = cylinder ? printCylinderPressure(cylinder.realBar, units).split(' ') : [];
  return (
    <div className={styles.gasReadingsGrid}>
      <Reading
        {...cover('oxygen-pressure')}
        why={<DeskWhy reading="oxygen-pressure" about="this oxygen pressure" />}
        label="Oxygen pressure"
        value={fixed(pO2Bar, 2)}
        unit="bar"
        roomFor={4}
        tone={isRemarkable(pO2Bar) ? 'rule' : 'plain'}
        note={oxygenNote(pO2Bar)}
      />
      <Reading
        {...cover('oxygen-single')}
        why={<DeskWhy reading="oxygen-single" about="this part of the single-exposure limit" />}
        label="Single exposure"
        value={percent(oxygen.singleFraction[sample]!)}
        unit="%"
        roomFor={3}
        tone={oxygen.singleFraction[sample]! > 1 ? 'rule' : 'plain'}
        note="of the limit for one exposure"
      />
      <Reading
        {...cover('oxygen-daily')}
        why={<DeskWhy reading="oxygen-daily" about="this part of the 24-hour limit" />}
        label="Oxygen in 24 h"
        value={percent(oxygen.dailyFraction[sample]!)}
        unit="%"
        roomFor={3}
        tone={oxygen.dailyFraction[sample]! > 1 ? 'rule' : 'plain'}
        note="of the limit for a day"
      />
      <Reading
        {...cover('oxygen-pulmonary')}
        why={<DeskWhy reading="oxygen-pulmonary" about="this pulmonary dose" />}
        label="Lung units"
        value={fixed(oxygen.pulmonaryUnits[sample]!, 0)}
        roomFor={4}
        note="since the start; they do not fade"
      />
      <Reading
        {...cover('gas-density')}
        why={<DeskWhy reading="gas-density" about="this gas density" />}
        label="Gas density"
        value={fixed(density, 1)}
        unit="g/L"
        roomFor={4}
        tone={band === 'within what is recommended' ? 'plain' : 'rule'}
        note={band}
      />
      {cylinder && (
        <Reading
          {...cover('cylinder')}
          label="Cylinder"
          value={pressure!}
          unit={pressureUnit}
          roomFor={4}
          note={`“${cylinder.name}”, ${cylinder.gas}; as an ideal gas ${printCylinderPressure(cylinder.idealBar, units)}`}
        />
      )}
    </div>
  );
}

const percent = (fraction: number) => String(Math.round(fraction * 100));

function isRemarkable(pO2Bar: number): boolean {
  return pO2Bar > WORKING_PO2_BAR || pO2Bar < LEAST_PO2_BAR;
}

function oxygenNote(pO2Bar: number): string {
  if (pO2Bar > RESTING_PO2_BAR) return `over ${RESTING_PO2_BAR}, taught as the limit at rest`;
  if (pO2Bar > WORKING_PO2_BAR) return `over ${WORKING_PO2_BAR}, taught as the limit at work`;
  return pO2Bar < LEAST_PO2_BAR ? `under ${LEAST_PO2_BAR}, the customary floor` : 'within what is taught';
}

/** The cylinder breathed at a sample: of several of the same gas, the one the supply says is in use. */
function cylinderInUse(scene: Scene, sample: number) {
  const supply = supplyOf(scene);
  if (!supply) return undefined;
  const { timeline } = scene;
  const timeS = timeline.timeS[sample]!;
  const spell = supply.real.spells.findLast(({ leg, startS }) => leg === timeline.leg[sample] && startS <= timeS);
  const gas = gasAt(timeline, sample);
  const index =
    spell && spell.cylinder >= 0
      ? spell.cylinder
      : supply.real.cylinders.findIndex(({ cylinder }) => sameGas(cylinder.gas, gas));
  const real = supply.real.cylinders[index];
  if (!real) return undefined;
  return {
    name: real.cylinder.name,
    gas: gasName(real.cylinder.gas),
    realBar: real.pressureBar[sample]!,
    idealBar: supply.ideal.cylinders[index]!.pressureBar[sample]!,
  };
}
