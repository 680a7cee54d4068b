'use client';

import { useDeferredValue, useMemo, useState } from 'react';
import { reserveFor } from '@/lib/exposure/reserve';
import { saySupplyEvent } from '@/lib/exposure/supply-events';
import type { GasSupply } from '@/lib/exposure/gas-supply';
import { TURN_RULES, type TurnRule } from '@/lib/exposure/turn-pressure';
import { gasName } from '@/lib/physics/gas';
import { printDayClock, sayAtDayClock } from '@/lib/dive/day-clock';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { TableColumn } from '../../parts/DataTable';
import { Segmented } from '../../parts/Segmented';
import type { Scene } from '../../pictures/scene';
import { PictureFrame } from '../figures/PictureFrame';
import { tableSamples } from '../../pictures/table-samples';
import { usePicture } from '../figures/use-picture';
import { CylinderEditor } from './CylinderEditor';
import { turnsOf, type CylinderTurn } from './cylinder-turns';
import { LoggedRate } from './LoggedRate';
import { ReserveTable } from './ReserveTable';
import { supplyOf } from '../../pictures/scene-exposure';
import { SupplyPicture, type PressureMark } from '../../pictures/gas/SupplyPicture';
import shared from '../../pictures/pictures.module.css';
import { DeepCaution } from './DeepCaution';
import styles from '../../pictures/gas/exposure.module.css';

/** What is carried to breathe: pressure over time, turn, reserve, and the moment it runs out. */
export function SupplyFigure() {
  const { ref, ...picture } = usePicture((width) => (width < 560 ? 290 : 320));
  const { scene, sample, units } = picture;
  const [rule, setRule] = useState<TurnRule>('all usable');
  const supply = supplyOf(scene);
  const dive = useDeferredValue(scene.dive);
  const reserve = useMemo(() => (dive.settings.supply?.cylinders.length ? reserveFor(dive) : undefined), [dive]);
  const turns = reserve ? turnsOf(reserve, dive.settings.supply?.cylinders ?? [], rule) : [];
  const table = useMemo(
    () => ({ columns: columnsOf(scene, units), rows: () => tableSamples(scene.timeline) }),
    [scene, units],
  );

  return (
    <PictureFrame id="supply" title="Cylinders" sentence={sentenceAt(scene, sample, supply, units)} {...table}>
      {supply && (
        <>
          <div className={shared.fitted}>
            <div ref={ref} className={shared.canvas}>
              <SupplyPicture
                {...picture}
                supply={supply}
                marks={turns.flatMap((turn) => marksOf(turn, turns.length > 1))}
              />
            </div>
            <p className={styles.legend}>
              <span /> as a real gas <span className={styles.secondKey} /> as an ideal gas
            </p>
          </div>
          {supply.events.length > 0 && (
            <ul className={styles.told} aria-label="What happens to the gas">
              {supply.events.map((event) => (
                <li key={event.text}>{saySupplyEvent(event, scene.timeline, units)}</li>
              ))}
            </ul>
          )}
        </>
      )}
      <CylinderEditor />
      {supply && (
        <>
          <section className={styles.part}>
            <h3>Turn and reserve</h3>
            <Segmented
              label="Turn by"
              segments={TURN_RULES.map((value) => ({ value, label: value }))}
              value={rule}
              onChange={setRule}
            />
            {reserve && <ReserveTable reserve={reserve} turns={turns} rule={rule} />}
          </section>
          <LoggedRate />
        </>
      )}
      <DeepCaution under="supply" />
    </PictureFrame>
  );
}

/** Where to turn and what to keep, as one mark where they are the same. */
function marksOf({ cylinder, turn: { turnBar }, reserveBar }: CylinderTurn, several: boolean): PressureMark[] {
  const named = (name: string) => (several ? `${name}, ${cylinder.name}` : name);
  const reserve = { name: named('reserve'), bar: reserveBar, kind: 'reserve' as const };
  if (Math.abs(turnBar - reserveBar) < 1) return [{ ...reserve, name: named('turn and reserve') }];
  return [{ name: named('turn'), bar: turnBar, kind: 'turn' }, reserve];
}

function sentenceAt(scene: Scene, sample: number, supply: GasSupply | undefined, units: UnitSystem): string {
  if (!supply) return 'The script lists no cylinders. Add one to follow its pressure over the dive.';
  const shown = supply.real.cylinders.map(({ cylinder, pressureBar }, index) => {
    const real = printCylinderPressure(pressureBar[sample]!, units);
    const ideal = printCylinderPressure(supply.ideal.cylinders[index]!.pressureBar[sample]!, units);
    return `“${cylinder.name}” ${real}${real === ideal ? '' : ` (ideal ${ideal})`}`;
  });
  const first = supply.events[0];
  return `${sayAtDayClock(scene.timeline, scene.timeline.timeS[sample]!)}: ${shown.join(', ')}.${first ? '' : ' Every cylinder lasts the dive; the reserve is another matter.'}`;
}

function columnsOf(scene: Scene, units: UnitSystem): TableColumn<number>[] {
  const supply = supplyOf(scene);
  return [
    { heading: 'Time', cell: (sample) => printDayClock(scene.timeline, scene.timeline.timeS[sample]!) },
    ...(supply?.real.cylinders ?? []).flatMap(({ cylinder, pressureBar }, index): TableColumn<number>[] => [
      {
        heading: `${cylinder.name} (${gasName(cylinder.gas)}), real`,
        numeric: true,
        cell: (sample) => printCylinderPressure(pressureBar[sample]!, units),
      },
      {
        heading: `${cylinder.name}, ideal`,
        numeric: true,
        cell: (sample) => printCylinderPressure(supply!.ideal.cylinders[index]!.pressureBar[sample]!, units),
      },
    ]),
  ];
}
