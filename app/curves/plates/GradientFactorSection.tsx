'use client';

import { useMemo } from 'react';
import { diveOfBottom } from '@/lib/curves/bottom-phase';
import type { SweepFigure, SweepGrid } from '@/lib/curves/gradient-factor-sweep';
import { defaultSettings } from '@/lib/dive/default-settings';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { printAs } from '@/lib/sayings/measures';
import { percentNumber, printFactors } from '@/lib/quantity/percent';
import { valueAt } from '../plot/contour-levels';
import { ContourPlot } from '../plot/ContourPlot';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurveReadings } from '../CurveReadings';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { DepthField, GasField, TimeField } from '../chosen/DiveFields';
import { DOWN_M_MIN } from '../chosen/curve-wish';
import type { SweepJob } from '../slow-work/heavy-work';
import { HeavyStanding } from '../slow-work/HeavyStanding';
import { GRADIENT_FACTORS } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { useHeavyWork } from '../slow-work/use-heavy-work';
import { WhyCurve } from '../WhyCurve';
import styles from '../curves.module.css';
import { DUST } from '@/lib/quantity/rounding';

const FIGURES: readonly { value: SweepFigure; label: string }[] = [
  { value: 'timeToSurface', label: 'time to surface' },
  { value: 'noStop', label: 'no-stop time' },
  { value: 'creditedNoStop', label: 'no-stop time, gas lost on the way up counted' },
];
const STEPS = [
  { value: '5', label: 'every 5%' },
  { value: '2', label: 'every 2%' },
  { value: '1', label: 'every 1%' },
] as const;
const WORKING_OF = { timeToSurface: 'time-to-surface', noStop: 'no-stop', creditedNoStop: 'credited-no-stop' } as const;
const LEAST = 10;
const MOST = 100;

/** What low and high gradient factors do, both at once: a map of times. */
export function GradientFactorSection() {
  const [{ depth: depthM, time: timeS, gas, figure, step: fineness, at: cursor }, set] = usePlate(
    'gradient-factors',
    GRADIENT_FACTORS,
  );
  const job = useMemo((): SweepJob => {
    const step = Number(fineness);
    const factors = Array.from({ length: (MOST - LEAST) / step + 1 }, (_, i) => (LEAST + i * step) / 100);
    const bottom = { settings: { ...defaultSettings(), gas }, depthM, minutes: timeS / 60, descentMMin: DOWN_M_MIN };
    return { kind: 'sweep', request: { bottom, figure, lows: factors, highs: factors } };
  }, [depthM, timeS, gas, figure, fineness]);
  const work = useHeavyWork(job);

  const controls = (
    <>
      <DepthField label="Depth" value={depthM} onValue={(depth) => set({ depth })} />
      <TimeField
        label="Time at depth"
        value={timeS}
        onValue={(time) => set({ time })}
        hint={figure === 'timeToSurface' ? 'From arriving there' : 'Of no account: a no-stop time is that on arriving'}
      />
      <GasField value={gas} onValue={(next) => set({ gas: next })} />
      <Segmented label="Factors tried" segments={STEPS} value={fineness} onChange={(step) => set({ step })} />
      <Segmented label="Minutes of" segments={FIGURES} value={figure} onChange={(next) => set({ figure: next })} />
      <HeavyStanding what="the map" work={work} />
    </>
  );

  return (
    <PlateSheet controls={controls}>
      {work.last && (
        <Map grid={work.last.result} request={work.last.job.request} cursor={cursor} onCursor={(at) => set({ at })} />
      )}
    </PlateSheet>
  );
}

interface MapProps {
  grid: SweepGrid;
  request: SweepJob['request'];
  cursor: { low: number; high: number };
  onCursor: (at: { low: number; high: number }) => void;
}

function Map({ grid, request, cursor, onCursor }: MapProps) {
  const units = usePreferences((state) => state.units);
  const { bottom, figure } = request;
  const step = (grid.lows.length > 1 ? Math.round((grid.lows[1]! - grid.lows[0]!) * 100) : 1) / 100;
  const onto = (factor: number) => Math.round(ontoStep(factor, LEAST / 100, MOST / 100, step) * 100) / 100;
  const high = onto(cursor.high);
  const low = Math.min(onto(cursor.low), high);
  const name = FIGURES.find(({ value }) => value === figure)!.label;
  const say = (minutes: number) =>
    printAs(figure === 'timeToSurface' ? 'timeToSurfaceMin' : 'noStopLimitMin', minutes, units);
  const percent = (factor: number) => percentNumber(factor);
  const tenths = grid.lows.filter((factor) => Math.round(factor * 100) % 10 === 0);
  const phase =
    figure === 'timeToSurface'
      ? `after ${writeTime(bottom.minutes * 60)} at ${sayDepth(bottom.depthM, units)} on ${gasName(bottom.settings.gas)}`
      : `on arriving at ${sayDepth(bottom.depthM, units)} on ${gasName(bottom.settings.gas)}`;
  const title =
    figure === 'timeToSurface'
      ? 'Time to surface for each pair of gradient factors'
      : 'No-stop time for each pair of gradient factors';
  return (
    <CurveFigure
      title={title}
      sentence={`Contours of ${name}, in minutes, ${phase}; darker is longer.${figure === 'noStop' ? ' The low factor has no say in a direct ascent, so the lines lie flat.' : ''}`}
      said={`At ${printFactors({ low, high })} it is ${say(valueAt(grid, low, high))}.`}
      picture={(width, height) => (
        <ContourPlot width={width} height={height} grid={grid} at={{ low, high }} onMove={onCursor} />
      )}
      columns={[
        { heading: 'High, down; low, across', cell: (row: number) => percent(row) },
        ...tenths.map((factor) => ({
          heading: percent(factor),
          numeric: true,
          cell: (row: number) => (factor > row + DUST ? '–' : say(valueAt(grid, factor, row))),
        })),
      ]}
      rows={() => tenths}
      source="The engine’s own ascents and no-stop times, one for each pair; the lines between are drawn, not worked out."
    >
      <div className={styles.sliders}>
        <CursorSlider
          label="Low factor to read"
          value={low}
          min={LEAST / 100}
          max={high}
          step={step}
          shown={`${percent(low)}%`}
          onChange={(next) => onCursor({ low: next, high })}
        />
        <CursorSlider
          label="High factor to read"
          value={high}
          min={LEAST / 100}
          max={MOST / 100}
          step={step}
          shown={`${percent(high)}%`}
          onChange={(next) => onCursor({ low: Math.min(low, next), high: next })}
        />
      </div>
      <CurveReadings
        label="Where the map is read"
        readings={[
          {
            id: figure,
            name: `${printFactors({ low, high })}, ${phase}`,
            value: say(valueAt(grid, low, high)),
            why: (
              <WhyCurve
                about={figure === 'timeToSurface' ? 'this time to surface' : 'this no-stop time'}
                ask={() => ({
                  dive: diveOfBottom({
                    ...bottom,
                    minutes: figure === 'timeToSurface' ? bottom.minutes : 0,
                    settings: { ...bottom.settings, gradientFactors: { low, high } },
                  }),
                  reading: WORKING_OF[figure],
                  where: `Under ${printFactors({ low, high })}, ${phase}`,
                })}
              />
            ),
          },
        ]}
      />
    </CurveFigure>
  );
}
