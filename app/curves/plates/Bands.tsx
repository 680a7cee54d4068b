'use client';

import { useMemo } from 'react';
import { noStopBand, type Band } from '@/lib/curves/how-sure';
import type { Dive } from '@/lib/dive/dive';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { printFactors, printPercent } from '@/lib/quantity/percent';
import { usePreferences } from '../../parts/preferences';
import { printAs } from '@/lib/sayings/measures';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurvePlot } from '../plot/CurvePlot';
import type { PlotPoint } from '../plot/plot-curve';
import { CurveReadings } from '../CurveReadings';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { setDownAt } from '../chosen/curve-wish';
import type { SureJob } from '../slow-work/heavy-work';
import { depthAxis, depthStep, evenAxis, tableDepths } from '../../pictures/axes/plot-axis';
import { HOW_SURE } from '../chosen/later-choices';
import { WhyCurve } from '../WhyCurve';
import styles from '../curves.module.css';
import { LONGEST_MIN } from './plate-bounds';
import { SAME_INSTANT_S } from '@/lib/dive/sample-instants';

export const LADDER = { from: 9, to: 60, step: 0.5 } as const;
const MOST = 420;

interface BandRow {
  readonly at: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export function Bands({ job, noStop, ceiling }: { job: SureJob; noStop: Band; ceiling: Band }) {
  const units = usePreferences((state) => state.units);
  const [{ at: cursorM, atTime: cursorS }, set] = usePlate('how-sure', HOW_SURE);
  const { conditions, variation, dive } = job;
  const step = depthStep(units);
  const readM = ontoStep(cursorM, LADDER.from, LADDER.to, step);
  const atDepth = useMemo(() => rowOf(noStopBand(conditions, [readM], variation), 0), [conditions, variation, readM]);
  const lastS = ceiling.at.at(-1)!;
  const everyS = Math.max(1, Math.round(lastS / 120));
  const nowS = Math.min(cursorS, lastS);
  const atTime = rowOf(
    ceiling,
    ceiling.at.findLastIndex((s) => s <= nowS + SAME_INSTANT_S),
  );
  const varied = `half-times ±${printPercent(variation.halfTimes, 1)}, limits ±${printPercent(variation.limits, 1)}, gauge ±${sayDepth(variation.depthM, units)}, gas at the start ±${printPercent(variation.start, 1)}`;
  const { low, high } = dive.settings.gradientFactors;
  const told = `On ${gasName(conditions.gas)}, ${printFactors({ low, high })}`;
  const across = (minutes: Float64Array): PlotPoint[] => Array.from(minutes, (value, i) => [value, noStop.at[i]!]);
  const down = (depths: Float64Array): PlotPoint[] => Array.from(depths, (value, i) => [ceiling.at[i]! / 60, value]);
  const deepest = Math.max(...ceiling.high, ...dive.steps.map((one) => ('toM' in one ? one.toM : 0)));

  return (
    <div className={styles.pair}>
      <CurveFigure
        title="No-stop time, as a band"
        beside
        most={MOST}
        sentence={`${told}, rested, from arriving at depth; ${varied}.`}
        said={`At ${sayDepth(readM, units)} the model says ${printAs('noStopLimitMin', atDepth.middle, units)}, and anything from ${printAs('noStopLimitMin', atDepth.low, units)} to ${printAs('noStopLimitMin', atDepth.high, units)} is within what was varied.`}
        picture={(width, height) => (
          <CurvePlot
            width={width}
            height={height}
            across={evenAxis('No-stop time, min', 0, LONGEST_MIN)}
            down={depthAxis(LADDER.from, LADDER.to, units)}
            grows="down"
            bands={[{ id: 'band', low: across(noStop.low), high: across(noStop.high) }]}
            curves={[{ id: 'middle', look: 0, points: across(noStop.middle) }]}
            cursor={{
              along: 'down',
              at: readM,
              onMove: (at) => set({ at }),
              hits: [
                { at: [atDepth.low, readM], look: 1 },
                { at: [atDepth.middle, readM], look: 0 },
                { at: [atDepth.high, readM], look: 1 },
              ],
            }}
          />
        )}
        columns={[
          { heading: 'Depth', cell: (row: BandRow) => sayDepth(row.at, units) },
          { heading: 'As short as', numeric: true, cell: (row) => printAs('noStopExactMin', row.low, units) },
          { heading: 'The model', numeric: true, cell: (row) => printAs('noStopExactMin', row.middle, units) },
          { heading: 'As long as', numeric: true, cell: (row) => printAs('noStopExactMin', row.high, units) },
        ]}
        rows={() => bandRows(noStopBand(conditions, tableDepths(LADDER.from, LADDER.to, units), variation))}
        source="What is varied, and how far, is a teaching choice and not a measurement."
      >
        <CursorSlider
          label="Depth to read in the band"
          value={readM}
          min={LADDER.from}
          max={LADDER.to}
          step={step}
          shown={sayDepth(readM, units)}
          onChange={(at) => set({ at })}
        />
        <CurveReadings
          label={`In the band at ${sayDepth(readM, units)}`}
          readings={[
            {
              id: 'no-stop',
              name: 'The model’s own no-stop time',
              value: printAs('noStopLimitMin', atDepth.middle, units),
              note: BESIDE_BAND,
              why: (
                <WhyCurve
                  about="this no-stop time"
                  ask={() => ({
                    dive: setDownAt(readM, dive.settings),
                    reading: 'no-stop',
                    where: `${told}, arriving at ${sayDepth(readM, units)}`,
                  })}
                />
              ),
            },
          ]}
        />
      </CurveFigure>
      <CurveFigure
        title="Ceiling of a dive, as a band"
        beside
        most={MOST}
        sentence={`${told}, straight up after its time at depth, stops or not; ${varied}.`}
        said={`${Math.round(nowS / 60)} min in, the model’s ceiling is ${sayLevel(atTime.middle, units)}, and anything from ${sayLevel(atTime.low, units)} to ${sayLevel(atTime.high, units)} is within what was varied.`}
        picture={(width, height) => (
          <CurvePlot
            width={width}
            height={height}
            across={evenAxis('Time, min', 0, lastS / 60)}
            down={depthAxis(0, deepest * 1.05, units)}
            grows="down"
            bands={[{ id: 'band', tone: 'stop', low: down(ceiling.low), high: down(ceiling.high) }]}
            curves={[
              { id: 'dive', look: 0, weight: 'heavy', points: profileOf(dive) },
              { id: 'middle', look: 1, tone: 'stop', points: down(ceiling.middle) },
            ]}
            cursor={{
              along: 'across',
              at: nowS / 60,
              onMove: (minutes) => set({ atTime: minutes * 60 }),
              hits: [
                { at: [nowS / 60, atTime.low], look: 1 },
                { at: [nowS / 60, atTime.middle], look: 0 },
                { at: [nowS / 60, atTime.high], look: 1 },
              ],
            }}
          />
        )}
        columns={[
          { heading: 'Time', cell: (row: BandRow) => `${Math.round(row.at / 6) / 10} min` },
          { heading: 'As shallow as', numeric: true, cell: (row) => sayLevel(row.low, units) },
          { heading: 'The model', numeric: true, cell: (row) => sayLevel(row.middle, units) },
          { heading: 'As deep as', numeric: true, cell: (row) => sayLevel(row.high, units) },
        ]}
        rows={() => {
          const all = bandRows(ceiling);
          return all.filter((_, i) => i % Math.ceil(all.length / 25) === 0);
        }}
      >
        <CursorSlider
          label="Time of the dive to read in the band"
          value={nowS}
          min={0}
          max={lastS}
          step={everyS}
          shown={`${Math.round(nowS / 60)} min`}
          onChange={(atTime) => set({ atTime })}
        />
        <CurveReadings
          label={`In the band ${Math.round(nowS / 60)} min in`}
          readings={[
            {
              id: 'ceiling',
              name: 'The model’s own ceiling',
              value: sayLevel(atTime.middle, units),
              note: BESIDE_BAND,
              why: (
                <WhyCurve
                  about="this ceiling"
                  ask={() => ({
                    dive,
                    at: { timeS: nowS, everyS: job.everyS },
                    reading: 'ceiling',
                    where: `${told}, ${Math.round(nowS / 60)} min in`,
                  })}
                />
              ),
            },
          ]}
        />
      </CurveFigure>
    </div>
  );
}

/** What a working does not tell. */
const BESIDE_BAND = 'the edges of the band come from the same steps with other numbers in them';

function rowOf({ at, low, middle, high }: Band, i: number): BandRow {
  return { at: at[i]!, low: low[i]!, middle: middle[i]!, high: high[i]! };
}

function bandRows(band: Band): BandRow[] {
  return Array.from(band.at, (_, i) => rowOf(band, i));
}

function profileOf({ steps }: Dive): PlotPoint[] {
  const points: PlotPoint[] = [[0, 0]];
  for (const step of steps) {
    if (step.kind === 'switch') continue;
    const [min, depth] = points.at(-1)!;
    points.push([min + step.durationS / 60, 'toM' in step ? step.toM : depth]);
  }
  return points;
}

function sayLevel(depthM: number, units: Parameters<typeof sayDepth>[1]): string {
  return depthM > 0 ? printAs('ceilingM', depthM, units) : 'the surface';
}
