'use client';

import { useMemo, useState } from 'react';
import type { Dive } from '@/lib/dive/dive';
import { stopDistributions, type StopDistribution } from '@/lib/exposure/stop-distribution';
import { atMost } from '@/lib/quantity/number';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { printPercent } from '@/lib/quantity/percent';
import { printAs } from '@/lib/sayings/measures';
import { AscentsPicture } from '../../pictures/gas/AscentsPicture';
import { AscentsTable } from '../../pictures/gas/AscentsTable';
import styles from '../../pictures/gas/exposure.module.css';

/** Compartments told together, by half-time: from and to, counted from 0, the last not included. */
const GROUPS = [
  { label: 'Highest, compartments 1 to 5', from: 0, to: 5 },
  { label: 'Highest, compartments 6 to 10', from: 5, to: 10 },
  { label: 'Highest, compartments 11 to 16', from: 10, to: 16 },
] as const;

/** The same time spent deeper or shallower by gradient factors; worked out once it is opened. */
export function StopDistributions({ dive, diveNumber }: { dive: Dive; diveNumber: number }) {
  const [open, setOpen] = useState(false);
  return (
    <Disclosure summary="Deeper or shallower stops, in the same time" onToggle={setOpen}>
      {open && <Drawn dive={dive} diveNumber={diveNumber} />}
    </Disclosure>
  );
}

function Drawn({ dive, diveNumber }: { dive: Dive; diveNumber: number }) {
  const units = usePreferences((state) => state.units);
  const spreads = useMemo(() => stopDistributions(dive, { diveNumber }), [dive, diveNumber]);
  const own = spreads.findIndex(({ gradientFactors }) => gradientFactors === dive.settings.gradientFactors);
  const peak = ({ peaks }: StopDistribution, from: number, to: number) =>
    printPercent(Math.max(...peaks.slice(from, to)));
  const depths = new Set(spreads.flatMap(({ stops }) => stops.map(({ depthM }) => depthM)));
  if (depths.size < 2)
    return (
      <p className={styles.remark}>
        This dive asks for {depths.size === 0 ? 'no stop' : 'one stop'}, so there is nothing to spread.
      </p>
    );
  return (
    <div className={`${styles.part} ${styles.whole}`}>
      <p>
        Each low gradient factor with the high one that takes as long as yours. Deep stops spare the fast compartments
        and keep loading the slow ones; shallow stops do the opposite. The model can show the trade; it can’t say which
        is better for a person.
      </p>
      <AscentsPicture ascents={spreads.map((spread) => ({ title: titleOf(spread), plan: spread.plan }))} chosen={own} />
      <AscentsTable
        caption="Stops timed to the second"
        columns={spreads.map((spread, index) => ({
          title: `${titleOf(spread)}${index === own ? ', yours' : ''}`,
          stops: spread.stops,
        }))}
        sayStop={({ minutes }) => printAs('plannedS', minutes * 60, units)}
        sums={[
          {
            label: 'Whole way up',
            cells: spreads.map(({ timeToSurfaceMin }) => printAs('plannedS', timeToSurfaceMin * 60, units)),
          },
          ...GROUPS.map(({ label, from, to }) => ({ label, cells: spreads.map((spread) => peak(spread, from, to)) })),
          {
            label: 'On surfacing',
            cells: spreads.map(({ surfacing }) => `${printPercent(surfacing.value)}, compartment ${surfacing.leader}`),
          },
        ]}
      />
      <p className={styles.remark}>
        “Highest” is the supersaturation a compartment meets on the way up, against its own limit.
      </p>
    </div>
  );
}

const titleOf = ({ gradientFactors: { low, high } }: StopDistribution) =>
  `${atMost(low * 100, 0)}/${atMost(high * 100, 1)}`;
