'use client';

import { useDeferredValue, useMemo, useState } from 'react';
import { parseGas, writeGas } from '@/lib/dive/gas-text';
import { gasModM } from '@/lib/exposure/gas-depths';
import { teachingTable, type TeachingRow } from '@/lib/exposure/teaching-table';
import { siteOf } from '@/lib/dive/timeline';
import { AIR, gasName, type Gas } from '@/lib/physics/gas';
import { WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { printAltitude } from '@/lib/quantity/altitude';
import { printStopDepth, sayDepth } from '@/lib/quantity/depth';
import { printFactors } from '@/lib/quantity/percent';
import { printRate } from '@/lib/quantity/rate';
import { partsAs, printAs } from '@/lib/sayings/measures';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { TypedValue } from '../../parts/TypedValue';
import { Watermarked } from '../../parts/Watermarked';
import { SiteControls } from '../SiteControls';
import { siteSettings, useSite } from '../site-store';
import { TableLookUp } from './TableLookUp';
import { parseMinutes, printMinutesList } from '@/lib/quantity/minutes-list';
import { parseDepths, printDepths, USUAL_DEPTHS_M, USUAL_TIMES_MIN } from './table-wish';
import shared from '../gases.module.css';
import styles from './table.module.css';
import { USUAL_DESCENT_M_MIN } from '@/lib/dive/bounds';

/** A table of no-stop times and stops, worked out by the engine for chosen limits. */
export function TableMaker() {
  const units = usePreferences((state) => state.units);
  const site = useSite();
  const [gas, setGas] = useState<Gas>(AIR);
  const [lastStopM, setLastStopM] = useState<'3' | '6'>('3');
  const [chosenM, setDepthsM] = useState<readonly number[]>();
  const [bottomMins, setBottomMins] = useState(USUAL_TIMES_MIN);
  const depthsM = chosenM ?? USUAL_DEPTHS_M[units];
  const wish = useMemo(
    () => ({ site, gas, lastStopM, depthsM, bottomMins }),
    [site, gas, lastStopM, depthsM, bottomMins],
  );
  const made = useDeferredValue(wish);
  const { settings, rows } = useMemo(() => {
    const usual = siteSettings(made.site, made.gas);
    const own = { ...usual, plan: { ...usual.plan, lastStopM: Number(made.lastStopM) } };
    return {
      settings: own,
      rows: teachingTable(own, {
        depthsM: made.depthsM,
        bottomMins: made.bottomMins,
        descentMMin: USUAL_DESCENT_M_MIN,
      }),
    };
  }, [made]);
  const modM = gasModM(made.gas, WORKING_PO2_BAR, siteOf({ settings, steps: [], lines: [] }));
  const { low, high } = settings.gradientFactors;
  const told = [
    `${gasName(made.gas)}, gradient factors ${printFactors({ low, high })}, ${settings.water} water at ${printAltitude(settings.altitudeM, units)}`,
    `descent at ${printRate(USUAL_DESCENT_M_MIN, units)}, ascent at ${printRate(settings.plan.ascentMMin, units)}, last stop at ${printStopDepth(settings.plan.lastStopM, units)}`,
    'a rested diver’s first dive',
  ].join('; ');

  return (
    <>
      <div className="unprinted">
        <div className={shared.board}>
          <SiteControls />
          <div className={shared.controls}>
            <TypedValue label="Gas" shown={writeGas(gas)} parse={parseGas} live onValue={setGas} />
            <div className={shared.wide}>
              <TypedValue
                label="Depths"
                shown={printDepths(depthsM, units)}
                parse={parseDepths}
                live
                onValue={setDepthsM}
              />
            </div>
            <div className={shared.wide}>
              <TypedValue
                label="Bottom times"
                shown={printMinutesList(bottomMins)}
                parse={parseMinutes}
                live
                onValue={setBottomMins}
              />
            </div>
            <Segmented
              label="Last stop at"
              segments={[
                { value: '3', label: printStopDepth(3, units) },
                { value: '6', label: printStopDepth(6, units) },
              ]}
              value={lastStopM}
              onChange={setLastStopM}
            />
          </div>
          <p>
            <Button icon="print" kind="primary" onClick={() => window.print()}>
              Print the table
            </Button>
          </p>
        </div>
      </div>
      <Watermarked>
        <div className={styles.scroll} role="region" aria-label="Teaching table" tabIndex={0}>
          <table className={styles.table}>
            <caption>
              <b>Teaching table.</b> {told}.
            </caption>
            <thead>
              <tr>
                <th scope="col">Depth</th>
                <th scope="col">No-stop time</th>
                {made.bottomMins.map((minutes) => (
                  <th key={minutes} scope="col">
                    {minutes} min
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.depthM}>
                  <th scope="row">
                    {sayDepth(row.depthM, units)}
                    {row.depthM > modM && <span className={styles.over}> oxygen over {WORKING_PO2_BAR} bar</span>}
                  </th>
                  <td className={styles.noStop}>{noStopWords(row)}</td>
                  {made.bottomMins.map((minutes) => (
                    <Cell key={minutes} row={row} minutes={minutes} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </Watermarked>
      <p className={styles.key}>
        Bottom time counts from leaving the surface to leaving the bottom. “–” is a direct ascent; a stop reads depth ×
        minutes, deepest first, and the last line is the whole way up in minutes. No groups and no second dive: this
        table knows one dive by a rested diver. It is nobody’s published table.
      </p>
      <TableLookUp rows={rows} bottomMins={made.bottomMins} />
    </>
  );
}

function noStopWords({ noStopMin }: TeachingRow): string {
  if (noStopMin === null) return 'over 300 min';
  return noStopMin === 0 ? 'none' : `${noStopMin} min`;
}

function Cell({ row, minutes }: { row: TeachingRow; minutes: number }) {
  const units = usePreferences((state) => state.units);
  const entry = row.entries.find(({ bottomMin }) => bottomMin === minutes);
  if (!entry) return <td className={styles.never}>too short to get there</td>;
  if (entry.stops.length === 0 && Number.isFinite(entry.timeToSurfaceMin)) return <td>–</td>;
  return (
    <td className={styles.stops}>
      {entry.stops.map((stop) => (
        <span key={stop.depthM}>
          {printAs('stopM', stop.depthM, units)} × {partsAs('stopMin', stop.minutes, units)[0]}
        </span>
      ))}
      <b>
        {Number.isFinite(entry.timeToSurfaceMin)
          ? `${printAs('timeToSurfaceMin', entry.timeToSurfaceMin, units)} up`
          : 'no stop is long enough'}
      </b>
    </td>
  );
}
