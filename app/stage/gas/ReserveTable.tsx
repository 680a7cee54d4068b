'use client';

import type { GasNeed } from '@/lib/exposure/gas-need';
import type { Reserve } from '@/lib/exposure/reserve';
import { TURN_RULE_MEANINGS, type TurnRule } from '@/lib/exposure/turn-pressure';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { atMost } from '@/lib/quantity/number';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import { printVolume } from '@/lib/quantity/volume';
import { sayStop } from '@/lib/sayings/stop-state';
import { DataTable } from '../../parts/DataTable';
import { usePreferences } from '../../parts/preferences';
import type { CylinderTurn } from './cylinder-turns';
import styles from '../../pictures/gas/exposure.module.css';

interface ReserveTableProps {
  reserve: Reserve;
  turns: readonly CylinderTurn[];
  rule: TurnRule;
}

/** The gas two divers need from the worst moment, gas by gas, and when to turn because of it. */
export function ReserveTable({ reserve, turns, rule }: ReserveTableProps) {
  const units = usePreferences((state) => state.units);
  const bar = (value: number | null) =>
    value === null ? 'no cylinder' : Number.isFinite(value) ? printCylinderPressure(value, units) : 'never enough';
  const { depthM, sharingMin, divers, stressFactor, schedule } = reserve;
  const stops = schedule.stops.map((stop) => sayStop(stop, units));
  return (
    <>
      <p className={styles.remark}>
        {divers} divers share from {sayDepth(depthM, units)}, at the last moment there: {sharingMin} min to find each
        other, then the way up the model asks for {stops.length > 0 ? `(${stops.join(', ')})` : 'with no stop'}, each
        breathing {atMost(stressFactor, 1)} times as fast as usual. Whether two frightened divers keep such stops, no
        model knows.
      </p>
      <DataTable
        caption="What two divers need"
        columns={[
          { heading: 'Gas', cell: (need: GasNeed) => gasName(need.gas) },
          {
            heading: 'Needed',
            numeric: true,
            cell: (need) => (Number.isFinite(need.litres) ? printVolume(need.litres, units) : 'without end'),
          },
          { heading: 'On the gauge, ideal', numeric: true, cell: (need) => bar(need.idealBar) },
          { heading: 'On the gauge, real', numeric: true, cell: (need) => bar(need.realBar) },
          { heading: 'Is it there at the start?', cell: (need) => (need.enough ? 'yes' : 'no: not enough') },
        ]}
        rows={reserve.needs}
      />
      {turns.map(({ cylinder, turn, reserveBar }) => (
        <p key={cylinder.name}>
          {turn.coversReserve
            ? `“${cylinder.name}”: turn at ${printCylinderPressure(turn.turnBar, units)}. ${printCylinderPressure(turn.usableBar, units)} lie above the reserve of ${printCylinderPressure(reserveBar, units)}.`
            : `“${cylinder.name}” does not cover the reserve even when full: this dive should not begin.`}
        </p>
      ))}
      <p className={styles.remark}>{TURN_RULE_MEANINGS[rule]} Common practice, no source.</p>
    </>
  );
}
