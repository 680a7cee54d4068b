'use client';

import { useDeferredValue, useMemo, useState } from 'react';
import { legsOf } from '@/lib/dive/legs';
import type { AscentPlan } from '@/lib/exposure/ascent-plan';
import { scriptWithPlan } from '@/lib/exposure/plan-script';
import { saySlip, slipsOf, variantsOf } from '@/lib/exposure/variants';
import { gasName } from '@/lib/physics/gas';
import { printStopDepth, sayDepth } from '@/lib/quantity/depth';
import { plainNumber } from '@/lib/quantity/number';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { printAs } from '@/lib/sayings/measures';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { PrintSheet } from '../../parts/PrintSheet';
import { Segmented } from '../../parts/Segmented';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { AscentBars } from '../../pictures/gas/AscentBars';
import { AscentsPicture } from '../../pictures/gas/AscentsPicture';
import { AscentsTable } from '../../pictures/gas/AscentsTable';
import { RunTimeSheet, runTimeColumns, runTimeRows } from './RunTimeSheet';
import { StopDistributions } from './StopDistributions';
import { useScriptEdit } from './use-script-edit';
import { DeepCaution } from './DeepCaution';
import slipStyles from '../../pictures/gas/ascents.module.css';
import styles from '../../pictures/gas/exposure.module.css';

const LAST_STOPS_M = [3, 6] as const;

/** The way up the model asks for from the last moment at the deepest point, and what it becomes when things go otherwise. */
export function StagedFigure() {
  const current = useDeskOncePainted((state) => state.scene.dive);
  const broken = useDesk((state) => state.errors.length > 0 || state.base !== undefined);
  const units = usePreferences((state) => state.units);
  const { edit, set } = useScriptEdit();
  // A dive is plain data, so an older one may be worked out while the next is dragged; a scene may not.
  const dive = useDeferredValue(current);
  const dives = useMemo(() => legsOf(dive).legs.at(-1)!.diveNumber + 1, [dive]);
  const [chosen, setChosen] = useState<number>();
  const diveNumber = Math.min(chosen ?? dives - 1, dives - 1);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [shown, setShown] = useState('as planned');
  const slips = slipsOf(dive).map((slip) => ({ slip, title: saySlip(slip, { system: units }) }));
  const variants = useMemo(() => {
    const system = units;
    const wanted = slipsOf(dive).filter((slip) => !left.has(saySlip(slip, { system })));
    return variantsOf(dive, { diveNumber, system, slips: wanted });
  }, [dive, diveNumber, units, left]);
  const planned = variants[0]!;
  const { plan } = planned;
  const other = variants.slice(1).find(({ title }) => title === shown);
  const ascents = other ? [planned, other] : [planned];
  const { lastStopM } = dive.settings.plan;
  const ends = Number.isFinite(plan.schedule.timeToSurfaceMin);
  const table = useMemo(
    () => ({ columns: runTimeColumns(units), rows: () => runTimeRows(plan, diveNumber) }),
    [units, plan, diveNumber],
  );

  return (
    <PictureFrame id="staged" title="Staged stops" sentence={sentenceOf(plan, units)} {...table}>
      <div className={styles.buttons}>
        {dives > 1 && (
          <Choice
            label="Which dive"
            value={String(diveNumber)}
            options={Array.from({ length: dives }, (_, i) => ({ value: String(i), label: `Dive ${i + 1}` }))}
            onChange={(value) => setChosen(Number(value))}
          />
        )}
        <Segmented
          label="Last stop at"
          segments={LAST_STOPS_M.map((depthM) => ({ value: String(depthM), label: printStopDepth(depthM, units) }))}
          value={String(lastStopM)}
          onChange={(depth) => set('last stop', `${plainNumber(Number(depth))} m`)}
        />
        <Button
          disabled={broken || !ends}
          onClick={() => {
            edit(() => scriptWithPlan(current, variantsOf(current, { diveNumber })[0]!.plan));
            useStatus.getState().say('The planned way up is in the script. Undo takes it out again.');
          }}
        >
          Put this way up into the script
        </Button>
        <PrintSheet label="Print the run-time table" title="Run-time table" disabled={!ends}>
          {() => <RunTimeSheet plan={plan} diveNumber={diveNumber} />}
        </PrintSheet>
      </div>
      <fieldset className={slipStyles.slips}>
        <legend>What goes otherwise</legend>
        {slips.map(({ title }) => (
          <label key={title}>
            <input
              type="checkbox"
              checked={!left.has(title)}
              onChange={({ target }) =>
                setLeft(new Set(target.checked ? [...left].filter((one) => one !== title) : [...left, title]))
              }
            />
            {title}
          </label>
        ))}
      </fieldset>
      <AscentBars variants={variants} chosen={other?.title ?? planned.title} onChoose={setShown} units={units} />
      <AscentsPicture ascents={ascents} chosen={ascents.length - 1} />
      <div className={styles.whole}>
        <AscentsTable
          caption={other ? `As planned, and ${other.title}` : 'As planned'}
          columns={ascents.map(({ title, plan: one }) => ({ title, stops: one.schedule.stops }))}
          sayStop={({ minutes, gas }) => `${printAs('stopMin', minutes, units)}, ${gasName(gas)}`}
          sums={[
            {
              label: 'Whole way up',
              cells: ascents.map(({ plan: one }) => printAs('timeToSurfaceMin', one.schedule.timeToSurfaceMin, units)),
            },
          ]}
        />
      </div>
      <StopDistributions dive={dive} diveNumber={diveNumber} />
      <DeepCaution under="staged" />
    </PictureFrame>
  );
}

function sentenceOf({ depthM, gas, schedule }: AscentPlan, units: UnitSystem): string {
  const from = `From the last moment at ${sayDepth(depthM, units)} on ${gasName(gas)}`;
  if (depthM === 0) return 'This dive never leaves the surface.';
  if (!Number.isFinite(schedule.timeToSurfaceMin)) return `${from} no stop would ever be long enough.`;
  if (schedule.stops.length === 0)
    return `${from} the model tolerates going straight up, in ${printAs('timeToSurfaceMin', schedule.timeToSurfaceMin, units)}.`;
  const first = schedule.stops[0]!;
  return `${from} the model asks for ${schedule.stops.length} ${schedule.stops.length === 1 ? 'stop' : 'stops'}, the first at ${printStopDepth(first.depthM, units)}, and ${printAs('timeToSurfaceMin', schedule.timeToSurfaceMin, units)} in all.`;
}
