'use client';

import { useState } from 'react';
import type { TeachingRow } from '@/lib/exposure/teaching-table';
import { sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { parseTime } from '@/lib/quantity/time';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { sayStop } from '@/lib/sayings/stop-state';
import { lookUp } from './look-up';
import shared from '../gases.module.css';
import { TypedDepth } from '../../parts/TypedDepth';

interface TableLookUpProps {
  rows: readonly TeachingRow[];
  bottomMins: readonly number[];
}

/** What the gauge showed, and where that lands in the table. */
export function TableLookUp({ rows, bottomMins }: TableLookUpProps) {
  const units = usePreferences((state) => state.units);
  const [depthM, setDepthM] = useState(28.4);
  const [timeS, setTimeS] = useState(23 * 60);
  return (
    <section className={`${shared.section} unprinted`} aria-labelledby="look-up">
      <h2 id="look-up">Read it with a bottom timer</h2>
      <div className={shared.controls}>
        <TypedDepth label="Greatest depth on the gauge" depthM={depthM} onDepth={setDepthM} />
        <TypedValue
          label="Time since leaving the surface"
          shown={writeTime(timeS)}
          parse={parseTime}
          live
          onValue={setTimeS}
        />
      </div>
      <p role="status">{sayLookedUp(rows, bottomMins, depthM, timeS / 60, units)}</p>
    </section>
  );
}

function sayLookedUp(
  rows: readonly TeachingRow[],
  bottomMins: readonly number[],
  depthM: number,
  bottomMin: number,
  units: UnitSystem,
): string {
  const found = lookUp(rows, bottomMins, depthM, bottomMin);
  const dive = `${sayDepth(depthM, units)} for ${Math.ceil(bottomMin)} min`;
  if (!found.found) {
    return found.beyond === 'depth'
      ? `${dive} is deeper than the deepest row. The table says nothing of it, and a diver who is there has left it behind.`
      : `${dive} is longer than the longest column of its row. The table says nothing of it, and a diver who is there has left it behind.`;
  }
  const { row, entry, withinNoStop } = found;
  const line = `${dive} is read in the row of ${sayDepth(row.depthM, units)}`;
  if (withinNoStop || !entry)
    return `${line}: within its no-stop time${row.noStopMin === null ? '' : ` of ${row.noStopMin} min`}, so you may come straight up.`;
  const stops = entry.stops.map((stop) => sayStop(stop, units));
  return `${line}, column of ${found.bottomMin} min: you need to stop for ${stops.join(', then ')}.`;
}
