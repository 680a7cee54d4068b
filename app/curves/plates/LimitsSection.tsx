'use client';

import { useMemo } from 'react';
import { gradientFactorAt } from '@/lib/ascent/ceiling';
import { curveSite } from '@/lib/curves/curve-site';
import { limitLines, type CompartmentLimits, type PressurePoint } from '@/lib/curves/limit-lines';
import { defaultSettings } from '@/lib/dive/default-settings';
import { readGradientFactors } from '@/lib/dive/script/settings/setting-values';
import { limitBar } from '@/lib/tissue/limit';
import { sayDepth } from '@/lib/quantity/depth';
import { fixed } from '@/lib/quantity/number';
import { percentNumber, printFactors, printPercent } from '@/lib/quantity/percent';
import { printPressure } from '@/lib/quantity/pressure';
import { usePreferences } from '../../parts/preferences';
import { Choice } from '../../parts/Choice';
import { Segmented } from '../../parts/Segmented';
import { TypedValue } from '../../parts/TypedValue';
import { nearest } from '../../pictures/hand/nearest';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurvePlot } from '../plot/CurvePlot';
import type { PlotCurve, PlotPoint } from '../plot/plot-curve';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { CurveKey } from '../plot/CurveKey';
import { CurveReadings } from '../CurveReadings';
import { setDownAt } from '../chosen/curve-wish';
import { depthStep, pressureAxis } from '../../pictures/axes/plot-axis';
import { LIMITS } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { WhyCurve } from '../WhyCurve';
import styles from '../curves.module.css';
import { DEEPEST_M } from './plate-bounds';
import { TypedDepth } from '../../parts/TypedDepth';

const SITE = curveSite(defaultSettings());
const LEAST_SHOWN_M = 12;
const ALL = Array.from({ length: 16 }, (_, c) => c + 1);
const SHARES = [
  { value: '0', label: 'nitrogen' },
  { value: '0.5', label: 'half of each' },
  { value: '1', label: 'helium' },
] as const;

/** What each compartment tolerates at each pressure: its own line, and those that gradient factors draw under it. */
export function LimitsSection() {
  const units = usePreferences((state) => state.units);
  const [values, set] = usePlate('limits', LIMITS);
  const {
    compartments: chosen,
    pointed,
    factors: gradientFactors,
    anchor: anchorM,
    helium: share,
    at: cursorM,
  } = values;
  const limits = useMemo(
    () => limitLines({ site: SITE, gradientFactors, heliumShare: Number(share), anchorM, deepestM: DEEPEST_M }),
    [gradientFactors, share, anchorM],
  );
  const drawn = limits.filter(({ compartment }) => chosen.includes(compartment));
  const step = depthStep(units);
  const depthM = ontoStep(cursorM, 0, DEEPEST_M, step);
  const ambientBar = SITE.surfaceBar + depthM * SITE.barPerMetre;
  const gf = gradientFactorAt(depthM, anchorM, gradientFactors);
  const inForce = ({ a, b }: CompartmentLimits) => limitBar(a, b, gf, ambientBar);
  const lead = drawn.find(({ compartment }) => compartment === pointed) ?? drawn[0];
  // Cropped to where something happens: from the surface to a little past the anchor and the depth read.
  const barAt = (atM: number) => SITE.surfaceBar + atM * SITE.barPerMetre;
  const leastBar = SITE.surfaceBar * 0.85;
  const mostBar = barAt(Math.min(DEEPEST_M, Math.max(anchorM, depthM, LEAST_SHOWN_M) * 1.15));
  const topBar = drawn.reduce((most, { a, b }) => Math.max(most, limitBar(a, b, 1, mostBar)), 2);
  const { low, high } = gradientFactors;
  const pair = printFactors({ low, high });

  const controls = (
    <>
      <fieldset className={styles.checks}>
        <legend>Compartments</legend>
        {ALL.map((compartment) => (
          <label key={compartment}>
            <input
              type="checkbox"
              checked={chosen.includes(compartment)}
              onChange={() => set({ compartments: toggled(chosen, compartment) })}
            />
            {compartment}
          </label>
        ))}
      </fieldset>
      {drawn.length > 0 && (
        <Choice
          label="Gradient lines of"
          value={String(lead?.compartment)}
          options={drawn.map(({ compartment }) => ({
            value: String(compartment),
            label: String(compartment),
          }))}
          onChange={(next) => set({ pointed: Number(next) })}
        />
      )}
      <TypedValue
        label="Gradient factors"
        shown={pair}
        parse={readGradientFactors}
        live
        onValue={(factors) => set({ factors })}
      />
      <TypedDepth
        label="Anchor of the line"
        depthM={anchorM}
        onDepth={(anchor) => set({ anchor })}
        hint="The low factor holds from here down; 0 for no line"
      />
      <Segmented label="Inert gas held" segments={SHARES} value={share} onChange={(helium) => set({ helium })} />
    </>
  );

  return (
    <PlateSheet controls={controls}>
      <CurveFigure
        title="What each compartment tolerates"
        sentence={`Ambient pressure across, what a compartment may hold upward. At ${sayDepth(depthM, units)} the gradient factor is ${printPercent(gf)}, between ${pair}.`}
        said={
          drawn.length === 0
            ? 'Choose a compartment to see its limits.'
            : `There ${drawn.map((one) => `compartment ${one.compartment} may hold ${printPressure(inForce(one), units)}`).join(', ')}.`
        }
        picture={(width, height) => (
          <CurvePlot
            width={width}
            height={height}
            across={pressureAxis('Ambient pressure', leastBar, mostBar, units)}
            down={pressureAxis('Inert gas held', leastBar, topBar * 1.03, units)}
            curves={[
              {
                id: 'balance',
                look: 2,
                weight: 'fine',
                points: [
                  [leastBar, leastBar],
                  [mostBar, mostBar],
                ],
                endName: 'as much as outside',
              },
              ...drawn.flatMap((one) => linesOf(one, one === lead, [leastBar, mostBar])),
            ]}
            rules={[{ along: 'across', at: SITE.surfaceBar, name: 'surface' }]}
            cursor={{
              along: 'across',
              at: ambientBar,
              hits: drawn.map((one) => ({ at: [ambientBar, inForce(one)], look: 0 })),
              onMove: (bar, heldBar) => {
                const near = nearest(drawn, ({ a, b }) => Math.abs(limitBar(a, b, gf, bar) - heldBar));
                set({
                  at: Math.max(0, (bar - SITE.surfaceBar) / SITE.barPerMetre),
                  ...(near && { pointed: near.compartment }),
                });
              },
            }}
          />
        )}
        legend={
          <CurveKey
            entries={[
              { name: 'own limit', look: 0, bare: true },
              { name: 'under one gradient factor', look: 1, bare: true },
              ...(anchorM > 0 ? [{ name: 'in force on the way up', look: 3, bare: true }] : []),
            ]}
          />
        }
        columns={[
          { heading: 'Compartment', cell: (one: CompartmentLimits) => one.compartment },
          {
            heading: 'Half-time N₂, He',
            numeric: true,
            cell: (one) => `${one.nitrogenHalfTimeMin}, ${one.heliumHalfTimeMin} min`,
          },
          { heading: 'a, bar', numeric: true, cell: ({ a }) => fixed(a, 4) },
          { heading: 'b', numeric: true, cell: ({ b }) => fixed(b, 4) },
          { heading: 'Slope 1/b', numeric: true, cell: ({ slope }) => fixed(slope, 3) },
          {
            heading: 'At the surface',
            numeric: true,
            cell: ({ surfacingBar }) => printPressure(surfacingBar.model, units),
          },
          {
            heading: `under ${percentNumber(low)}`,
            numeric: true,
            cell: ({ surfacingBar }) => printPressure(surfacingBar.low, units),
          },
          {
            heading: `under ${percentNumber(high)}`,
            numeric: true,
            cell: ({ surfacingBar }) => printPressure(surfacingBar.high, units),
          },
        ]}
        rows={() => limits}
        source="M = a + p/b (Bühlmann); a gradient factor takes its share of what lies between the ambient pressure and M."
      >
        <CursorSlider
          label="Depth to read"
          value={depthM}
          min={0}
          max={DEEPEST_M}
          step={step}
          shown={sayDepth(depthM, units)}
          onChange={(at) => set({ at })}
        />
        <CurveReadings
          label={`Tolerated at ${sayDepth(depthM, units)}`}
          readings={drawn.map((one) => ({
            id: one.compartment,
            name: `Compartment ${one.compartment}`,
            value: printPressure(inForce(one), units),
            why: (
              <WhyCurve
                about={`what compartment ${one.compartment} tolerates`}
                ask={() => ({
                  dive: setDownAt(depthM, { ...defaultSettings(), gradientFactors }),
                  reading: { compartment: one.compartment, heliumShare: Number(share), anchorM },
                  where: `At ${sayDepth(depthM, units)}, ${pair}, ${anchorM > 0 ? `the line begins at ${sayDepth(anchorM, units)}` : 'no line'}`,
                })}
              />
            ),
          }))}
        />
      </CurveFigure>
    </PlateSheet>
  );
}

function toggled(chosen: readonly number[], compartment: number): readonly number[] {
  return chosen.includes(compartment)
    ? chosen.filter((one) => one !== compartment)
    : [...chosen, compartment].sort((one, other) => one - other);
}

const asPoint = ({ ambientBar, tensionBar }: PressurePoint): PlotPoint => [ambientBar, tensionBar];

/** The gradient factors’ own lines are drawn of the compartment pointed at. */
function linesOf(
  { compartment, a, b, lowLine, highLine, fromLowToHigh }: CompartmentLimits,
  isPointed: boolean,
  ambientBar: readonly number[],
): PlotCurve[] {
  const model: PlotCurve = {
    id: `${compartment} model`,
    look: 0,
    tone: 'stop',
    points: ambientBar.map((bar) => [bar, limitBar(a, b, 1, bar)]),
    endName: String(compartment),
  };
  if (!isPointed) return [model];
  return [
    { id: `${compartment} low`, look: 1, weight: 'fine', points: lowLine.map(asPoint) },
    { id: `${compartment} high`, look: 1, weight: 'fine', points: highLine.map(asPoint) },
    { id: `${compartment} bent`, look: 3, weight: 'heavy', tone: 'stop', points: fromLowToHigh.map(asPoint) },
    model,
  ];
}
