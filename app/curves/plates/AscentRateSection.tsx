'use client';

import { useDeferredValue, useMemo } from 'react';
import { ascentRateCurve, type AscentAtRate } from '@/lib/curves/ascent-rate-curve';
import { bottomOf, diveOfBottom, type BottomPhase } from '@/lib/curves/bottom-phase';
import { defaultSettings } from '@/lib/dive/default-settings';
import { gasName, type Gas } from '@/lib/physics/gas';
import { printStopDepth, sayDepth } from '@/lib/quantity/depth';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { percentNumber, printFactors } from '@/lib/quantity/percent';
import { printRate } from '@/lib/quantity/rate';
import { printMinutesList } from '@/lib/quantity/minutes-list';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { printAs } from '@/lib/sayings/measures';
import { parseBottomTimes } from '../chosen/bottom-values';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurvePlot } from '../plot/CurvePlot';
import type { PlotPoint } from '../plot/plot-curve';
import { CurveReadings } from '../CurveReadings';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { DepthField, FactorsField, GasField } from '../chosen/DiveFields';
import { DOWN_M_MIN } from '../chosen/curve-wish';
import { evenAxis } from '../../pictures/axes/plot-axis';
import { ASCENT_RATE } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { WhyCurve } from '../WhyCurve';
import styles from '../curves.module.css';

const SLOWEST = 1;
const FASTEST = 30;
const MOST = 400;
const RATES = Array.from({ length: 2 * (FASTEST - SLOWEST) + 1 }, (_, i) => SLOWEST + i / 2);

interface RateRow {
  readonly rateMMin: number;
  readonly each: readonly AscentAtRate[];
}

/** What the rate of the way up does: gas left in you at the surface, and stops asked for. */
export function AscentRateSection() {
  const units = usePreferences((state) => state.units);
  const [{ depth: depthM, times, gas, factors: gradientFactors, rate: rateMMin }, set] = usePlate(
    'ascent-rate',
    ASCENT_RATE,
  );
  const asked = useMemo(() => ({ depthM, times, gas, gradientFactors }), [depthM, times, gas, gradientFactors]);
  const drawn = useDeferredValue(asked);
  const curves = useMemo(
    () => drawn.times.map((minutes) => ({ minutes, all: ascents(drawn, minutes, RATES) })),
    [drawn],
  );
  const step = units === 'metric' ? 0.5 : 5 * METRES_PER_FOOT;
  const rate = ontoStep(rateMMin, units === 'metric' ? SLOWEST : step, FASTEST, step);
  const now = useMemo(() => drawn.times.map((minutes) => ascents(drawn, minutes, [rate])[0]!), [drawn, rate]);
  const { low, high } = drawn.gradientFactors;
  const perMinute = units === 'metric' ? 1 : 1 / METRES_PER_FOOT;
  const across = evenAxis(`Rate of the ascent, ${units === 'metric' ? 'm/min' : 'ft/min'}`, 0, FASTEST, perMinute);
  const most = Math.max(1.1, ...curves.flatMap(({ all }) => all.map(({ direct }) => direct.surfacingSupersaturation)));
  const longest = Math.max(
    5,
    ...curves.flatMap(({ all }) => all.map(({ required }) => required.timeToSurfaceMin)).filter(Number.isFinite),
  );
  const told = `On ${gasName(drawn.gas)}, down to ${sayDepth(drawn.depthM, units)} at ${printRate(DOWN_M_MIN, units)}`;
  const line = (all: readonly AscentAtRate[], of: (one: AscentAtRate) => number) =>
    all.map((one): PlotPoint => [one.rateMMin, of(one)]);
  const rows = () => {
    // Round in either system, so that a row is of the very rate it names.
    const places = Array.from({ length: units === 'metric' ? 11 : 10 }, (_, i) =>
      units === 'metric' ? Math.max(SLOWEST, 3 * i) : Math.max(5, 10 * i) * METRES_PER_FOOT,
    );
    const all = drawn.times.map((minutes) => ascents(drawn, minutes, places));
    return places.map((one, i): RateRow => ({ rateMMin: one, each: all.map((ofTime) => ofTime[i]!) }));
  };
  const cursor = (of: (one: AscentAtRate) => number) => ({
    along: 'across' as const,
    at: rate,
    onMove: (next: number) => set({ rate: next }),
    hits: now.map((one, look) => ({ at: [rate, of(one)] as const, look })),
  });
  const slider = (label: string) => (
    <CursorSlider
      label={label}
      value={rate}
      min={units === 'metric' ? SLOWEST : step}
      max={FASTEST}
      step={step}
      shown={printRate(rate, units)}
      onChange={(next) => set({ rate: next })}
    />
  );
  const after = (minutes: number) => `After ${minutes} min at ${sayDepth(drawn.depthM, units)}`;
  const rateColumn = { heading: 'Rate', cell: (row: RateRow) => printRate(row.rateMMin, units) };

  const controls = (
    <>
      <DepthField label="Depth" value={depthM} onValue={(depth) => set({ depth })} />
      <TypedValue
        label="Times at depth"
        shown={printMinutesList(times)}
        parse={parseBottomTimes}
        live
        onValue={(next) => set({ times: next })}
        hint="One curve each"
      />
      <GasField value={gas} onValue={(next) => set({ gas: next })} />
      <FactorsField value={gradientFactors} onValue={(factors) => set({ factors })} />
    </>
  );

  return (
    <>
      <PlateSheet controls={controls}>
        <div className={styles.pair}>
          <CurveFigure
            title="Straight up: supersaturation on surfacing"
            beside
            most={MOST}
            sentence={`${told}, then straight up at each rate, stops or not. 100% is the model’s own limit at the surface.`}
            said={`At ${printRate(rate, units)}: ${now.map((one, i) => `${printAs('supersaturation', one.direct.surfacingSupersaturation, units)} after ${drawn.times[i]} min`).join(', ')}.`}
            picture={(width, height) => (
              <CurvePlot
                width={width}
                height={height}
                across={across}
                down={evenAxis('Share of the way to the limit, %', 0, most * 1.06, 100)}
                curves={curves.map(({ minutes, all }, look) => ({
                  id: String(minutes),
                  look,
                  endName: `${minutes} min`,
                  tone: 'gas',
                  marked: true,
                  points: line(all, ({ direct }) => direct.surfacingSupersaturation),
                }))}
                rules={[
                  { along: 'down', at: 1, name: 'the model’s limit', tone: 'stop' },
                  ...(high < 1
                    ? [{ along: 'down' as const, at: high, name: `gradient factor ${percentNumber(high)}` }]
                    : []),
                ]}
                cursor={cursor(({ direct }) => direct.surfacingSupersaturation)}
              />
            )}
            columns={[
              rateColumn,
              ...drawn.times.map((minutes, i) => ({
                heading: `After ${minutes} min`,
                numeric: true,
                cell: ({ each }: RateRow) =>
                  `${printAs('supersaturation', each[i]!.direct.surfacingSupersaturation, units)}, compartment ${each[i]!.direct.leader}`,
              })),
            ]}
            rows={rows}
          >
            {slider('Rate to read, straight up')}
            <CurveReadings
              label={`On surfacing at ${printRate(rate, units)}`}
              readings={now.map(({ direct }, i) => ({
                id: i,
                look: i,
                name: after(drawn.times[i]!),
                value: printAs('supersaturation', direct.surfacingSupersaturation, units),
                note: `compartment ${direct.leader}`,
                why: (
                  <WhyCurve
                    about={`this supersaturation on surfacing after ${drawn.times[i]!} min`}
                    ask={() => ({
                      dive: diveOfBottom(phaseOf(drawn, drawn.times[i]!), rate),
                      reading: 'surfacing-supersaturation',
                      where: `${after(drawn.times[i]!)}, straight up at ${printRate(rate, units)}`,
                    })}
                  />
                ),
              }))}
            />
          </CurveFigure>
          <CurveFigure
            title="As the model asks: time to surface"
            beside
            most={MOST}
            sentence={`${told}, then up at each rate with the stops that ${printFactors({ low, high })} asks for.`}
            said={`At ${printRate(rate, units)}: ${now.map((one, i) => `${printAs('timeToSurfaceMin', one.required.timeToSurfaceMin, units)} up after ${drawn.times[i]} min, ${sayStops(one, units)}`).join('; ')}.`}
            picture={(width, height) => (
              <CurvePlot
                width={width}
                height={height}
                across={across}
                down={evenAxis('Time to surface, min', 0, longest * 1.06)}
                curves={curves.map(({ minutes, all }, look) => ({
                  id: String(minutes),
                  look,
                  endName: `${minutes} min`,
                  tone: 'stop',
                  marked: true,
                  points: line(all, ({ required }) => required.timeToSurfaceMin),
                }))}
                cursor={cursor(({ required }) => required.timeToSurfaceMin)}
              />
            )}
            columns={[
              rateColumn,
              ...drawn.times.map((minutes, i) => ({
                heading: `After ${minutes} min`,
                cell: ({ each }: RateRow) =>
                  `${printAs('timeToSurfaceMin', each[i]!.required.timeToSurfaceMin, units)} up, ${sayStops(each[i]!, units)}`,
              })),
            ]}
            rows={rows}
          >
            {slider('Rate to read, with stops')}
            <CurveReadings
              label={`Time to surface at ${printRate(rate, units)}`}
              readings={now.map((one, i) => ({
                id: i,
                look: i,
                name: after(drawn.times[i]!),
                value: printAs('timeToSurfaceMin', one.required.timeToSurfaceMin, units),
                note: sayStops(one, units),
                why: (
                  <WhyCurve
                    about={`this time to surface after ${drawn.times[i]!} min`}
                    ask={() => ({
                      dive: diveOfBottom(atRate(phaseOf(drawn, drawn.times[i]!), rate)),
                      reading: 'time-to-surface',
                      where: `${after(drawn.times[i]!)}, then up at ${printRate(rate, units)}`,
                    })}
                  />
                ),
              }))}
            />
          </CurveFigure>
        </div>
      </PlateSheet>
      <p className={styles.source}>
        The model knows what gas is left, and no more: a slow ascent also lets bubbles shrink or stay away, of which it
        knows nothing. It may even reward a fast one, because a slow one keeps loading slow compartments on the way.
      </p>
    </>
  );
}

interface Phase {
  readonly depthM: number;
  readonly gas: Gas;
  readonly gradientFactors: { low: number; high: number };
}

function phaseOf({ depthM, gas, gradientFactors }: Phase, minutes: number): BottomPhase {
  return { settings: { ...defaultSettings(), gas, gradientFactors }, depthM, minutes, descentMMin: DOWN_M_MIN };
}

function atRate(phase: BottomPhase, ascentMMin: number): BottomPhase {
  return { ...phase, settings: { ...phase.settings, plan: { ...phase.settings.plan, ascentMMin } } };
}

function ascents(asked: Phase, minutes: number, ratesMMin: readonly number[]): AscentAtRate[] {
  const phase = phaseOf(asked, minutes);
  const { site, end } = bottomOf(phase);
  return ascentRateCurve(phase.settings, site, end, ratesMMin);
}

function sayStops({ required }: AscentAtRate, units: Parameters<typeof printStopDepth>[1]): string {
  if (required.stops === 0) return 'no stops';
  return `${required.stops} ${required.stops === 1 ? 'stop' : 'stops'} from ${printStopDepth(required.deepestStopM, units)}, ${printAs('stopMin', required.stopMin, units)}`;
}
