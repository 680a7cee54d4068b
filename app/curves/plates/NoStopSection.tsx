'use client';

import { useDeferredValue, useMemo, useRef, useState } from 'react';
import { depthLadder } from '@/lib/curves/curve-site';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { PUBLISHED_TABLES } from '@/lib/curves/published-no-stop';
import { sayDepth } from '@/lib/quantity/depth';
import { fixed } from '@/lib/quantity/number';
import { printRate } from '@/lib/quantity/rate';
import { Button } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { useStatus } from '../../parts/status';
import { printAs } from '@/lib/sayings/measures';
import { useAtlas, usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurveKey } from '../plot/CurveKey';
import { CurvePlot } from '../plot/CurvePlot';
import type { PlotCurve } from '../plot/plot-curve';
import { CurveReadings } from '../CurveReadings';
import { MOST_CURVES } from '../plot/curve-looks';
import { arrivalAt, DOWN_M_MIN, sayWish, sayWishShortly, wishConditions, type CurveWish } from '../chosen/curve-wish';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { depthAxis, depthStep, evenAxis, tableDepths } from '../../pictures/axes/plot-axis';
import { TablesBeside } from './LaterPlates';
import { NO_STOP } from '../chosen/plate-choices';
import { PlateSheet } from './PlateSheet';
import { WhyCurve } from '../WhyCurve';
import { WishRow } from '../chosen/WishRow';
import styles from '../curves.module.css';
import { DEEPEST_M, LONGEST_MIN } from './plate-bounds';

const SHALLOWEST_M = 6;
const LADDER = depthLadder(SHALLOWEST_M, DEEPEST_M, 0.5);

/** No-stop time against depth: the engine's for what is asked, several at once, with published tables beside. */
export function NoStopSection() {
  const units = usePreferences((state) => state.units);
  const [{ wishes, counted, tables, at: cursorM }, set] = usePlate('no-stop', NO_STOP);
  const [added, setAdded] = useState<number>();
  const say = useStatus((status) => status.say);
  const descentMMin = counted === 'surface' ? DOWN_M_MIN : undefined;
  const asked = useMemo(() => ({ wishes, descentMMin }), [wishes, descentMMin]);
  // Helium is searched for, not solved: typing stays ahead of it.
  const drawn = useDeferredValue(asked);
  const conditions = useMemo(() => drawn.wishes.map((wish) => wishConditions(wish, drawn.descentMMin)), [drawn]);
  const curves = useMemo(
    () =>
      conditions.map((one, look): PlotCurve => {
        const { minutes } = noStopCurve(one, LADDER);
        return {
          id: String(look),
          look,
          marked: true,
          endName: sayWishShortly(drawn.wishes[look]!, drawn.wishes, units),
          points: Array.from(LADDER, (depthM, i) => [minutes[i]!, depthM]),
        };
      }),
    [conditions, drawn, units],
  );
  const step = depthStep(units);
  const depthM = ontoStep(cursorM, SHALLOWEST_M, DEEPEST_M, step);
  const at = useMemo(() => conditions.map((one) => noStopCurve(one, [depthM])), [conditions, depthM]);
  const shown = PUBLISHED_TABLES.filter(({ id }) => tables.includes(id));
  const key = shown.map(({ name, id }) => ({ name: `${name}, as printed`, look: tableLook(id), dotOnly: true }));
  const counting =
    drawn.descentMMin === undefined
      ? ''
      : `; the curve adds the ${fixed(depthM / drawn.descentMMin, 1)} min of the way down`;
  const arriving = (wish: CurveWish) => `On arriving at ${sayDepth(depthM, units)}: ${sayWish(wish, units)}${counting}`;
  const adding = useRef<HTMLDivElement>(null);
  const remove = (place: number) => {
    set({ wishes: wishes.filter((_, one) => one !== place) });
    setAdded(undefined);
    say(`Curve ${place + 1} is removed: ${sayWish(wishes[place]!, units)}.`, {
      label: 'Undo',
      run: useAtlas.getState().undo,
    });
    requestAnimationFrame(() => adding.current?.querySelector('button')?.focus());
  };
  const controls = (
    <>
      <div className={styles.wishes}>
        {wishes.map((wish, place) => (
          <WishRow
            key={place}
            wish={wish}
            place={place}
            open={place === added}
            onChange={(changed) => set({ wishes: wishes.map((one, at) => (at === place ? changed : one)) })}
            onRemove={wishes.length > 1 ? () => remove(place) : undefined}
          />
        ))}
      </div>
      <div ref={adding}>
        <Button
          icon="plus"
          disabled={wishes.length === MOST_CURVES}
          onClick={() => {
            setAdded(wishes.length);
            set({ wishes: [...wishes, wishes.at(-1)!] });
            say(`Curve ${wishes.length + 1} is added, for now the same as the one before.`);
          }}
        >
          Add a curve
        </Button>
      </div>
      <Segmented
        label="Minutes count from"
        value={counted}
        onChange={(next) => set({ counted: next })}
        segments={[
          { value: 'arrival', label: 'arriving at depth' },
          { value: 'surface', label: 'leaving the surface' },
        ]}
      />
      <Disclosure summary="Published tables beside" open={tables.length > 0}>
        <fieldset className={styles.checks}>
          <legend>Printed no-stop times on air</legend>
          {PUBLISHED_TABLES.map(({ id, name }) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={tables.includes(id)}
                onChange={() =>
                  set({ tables: tables.includes(id) ? tables.filter((one) => one !== id) : [...tables, id] })
                }
              />
              {name}
            </label>
          ))}
        </fieldset>
      </Disclosure>
    </>
  );

  return (
    <>
      <PlateSheet controls={controls}>
        <CurveFigure
          title="No-stop time against depth"
          sentence={`Left of a curve you may come straight up by the model; right of it you need to stop. Minutes count from ${counted === 'arrival' ? 'arriving at depth' : `leaving the surface at ${printRate(DOWN_M_MIN, units)}`}, in water of ${sayDepth(10, units)} to the bar.`}
          said={sayReadings(drawn.wishes, at, depthM, units)}
          picture={(width, height) => (
            <CurvePlot
              width={width}
              height={height}
              across={evenAxis('No-stop time, min', 0, LONGEST_MIN)}
              down={depthAxis(SHALLOWEST_M, DEEPEST_M, units)}
              grows="down"
              curves={curves}
              dots={shown.flatMap((table) =>
                table.rows.map((row) => ({
                  at: [row.minutes, row.depthM] as const,
                  look: tableLook(table.id),
                  open: true,
                })),
              )}
              cursor={{
                along: 'down',
                at: depthM,
                onMove: (next) => set({ at: next }),
                hits: at.map(({ minutes }, look) => ({ at: [minutes[0]!, depthM] as const, look })),
              }}
            />
          )}
          legend={key.length > 0 && <CurveKey entries={key} />}
          columns={[
            { heading: 'Depth', cell: (depth: TableRow) => sayDepth(depth.depthM, units) },
            ...drawn.wishes.map((wish, i) => ({
              heading: sayWish(wish, units),
              numeric: true,
              cell: (row: TableRow) => printAs('noStopLimitMin', row.minutes[i]!, units),
            })),
          ]}
          rows={() => tableRows(conditions, tableDepths(SHALLOWEST_M, DEEPEST_M, units))}
          source="ZH-L16C with compartment 1b, from published coefficients. Whole minutes, cut and not rounded."
        >
          <CursorSlider
            label="Depth to read"
            value={depthM}
            min={SHALLOWEST_M}
            max={DEEPEST_M}
            step={step}
            shown={sayDepth(depthM, units)}
            onChange={(next) => set({ at: next })}
          />
          <CurveReadings
            label={`No-stop times at ${sayDepth(depthM, units)}`}
            readings={drawn.wishes.map((wish, i) => ({
              id: i,
              look: i,
              name: sayWish(wish, units),
              value: printAs('noStopLimitMin', at[i]!.minutes[0]!, units),
              note: at[i]!.leader[0] ? `compartment ${at[i]!.leader[0]} is first` : 'no compartment gets there',
              why: (
                <WhyCurve
                  about={`the no-stop time of curve ${i + 1}`}
                  ask={() => ({
                    dive: arrivalAt(wish, depthM, drawn.descentMMin),
                    reading: 'no-stop',
                    where: arriving(wish),
                  })}
                />
              ),
            }))}
          />
        </CurveFigure>
      </PlateSheet>
      {shown.length > 0 && <TablesBeside tables={shown} depthM={depthM} gf={wishes[0]!.gradientFactors.high} />}
    </>
  );
}

interface TableRow {
  readonly depthM: number;
  readonly minutes: readonly number[];
}

function tableRows(conditions: readonly Parameters<typeof noStopCurve>[0][], depthsM: readonly number[]): TableRow[] {
  const all = conditions.map((one) => noStopCurve(one, depthsM).minutes);
  return depthsM.map((depthM, i) => ({ depthM, minutes: all.map((minutes) => minutes[i]!) }));
}

function sayReadings(
  wishes: readonly CurveWish[],
  at: readonly { minutes: Float64Array }[],
  depthM: number,
  units: Parameters<typeof sayWish>[1],
): string {
  return `At ${sayDepth(depthM, units)}: ${wishes.map((wish, i) => `${printAs('noStopLimitMin', at[i]!.minutes[0]!, units)} on ${sayWish(wish, units)}`).join('; ')}.`;
}

function tableLook(id: string): number {
  return PUBLISHED_TABLES.findIndex((table) => table.id === id);
}
