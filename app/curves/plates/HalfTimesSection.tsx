'use client';

import { useMemo } from 'react';
import { curveSite } from '@/lib/curves/curve-site';
import {
  HALF_TIMES_TO_SETTLE,
  shareAfterHalfTimes,
  stepBetweenDepths,
  stepDive,
  stepResponses,
  type StepResponse,
} from '@/lib/curves/half-times';
import { defaultSettings } from '@/lib/dive/default-settings';
import { AIR } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { printHours } from '@/lib/quantity/duration';
import { atMost } from '@/lib/quantity/number';
import { printPercent } from '@/lib/quantity/percent';
import { printPressure } from '@/lib/quantity/pressure';
import { Choice } from '../../parts/Choice';
import { DataTable } from '../../parts/DataTable';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurvePlot } from '../plot/CurvePlot';
import { CurveReadings } from '../CurveReadings';
import { CursorSlider } from '../plot/CursorSlider';
import { doublingAxis, evenAxis, pressureAxis } from '../../pictures/axes/plot-axis';
import { HALF_TIMES } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { WhyCurve } from '../WhyCurve';
import { TypedDepth } from '../../parts/TypedDepth';

const SITE = curveSite(defaultSettings());
const HORIZON = { even: [0, 240], doubling: [1, 5000] } as const;
const SAMPLES = 240;
/** Places of the cursor: each 1/40 of the way along the axis drawn. */
const PLACES = 80;
const NUMBERS = Array.from({ length: 16 }, (_, c) => ({ value: String(c + 1), label: String(c + 1) }));

/** A step change in pressure and sixteen answers to it. */
export function HalfTimesSection() {
  const units = usePreferences((state) => state.units);
  const [{ from: fromM, to: toM, axis, compartment, place }, set] = usePlate('half-times', HALF_TIMES);
  const asked = String(compartment);
  const { startBar, breathedBar } = stepBetweenDepths(SITE, AIR, fromM, toM);
  const [first, last] = HORIZON[axis];
  const across =
    axis === 'even'
      ? evenAxis('Time after the change, min', first, last)
      : doublingAxis('Time after the change, min (each step doubles as far)', first, last);
  const along = across.scale([0, 1]);
  const atMin = along.invert(place / PLACES);
  const minutes = useMemo(() => {
    const even = (i: number) => HORIZON.even[1] * (i / SAMPLES);
    const doubling = (i: number) => HORIZON.doubling[1] ** (i / SAMPLES);
    return Array.from({ length: SAMPLES + 1 }, (_, i) => (axis === 'even' ? even(i) : doubling(i)));
  }, [axis]);
  const answers = useMemo(
    () => stepResponses(SITE.compartments, 'nitrogen', startBar, breathedBar, minutes),
    [startBar, breathedBar, minutes],
  );
  const now = stepResponses(SITE.compartments, 'nitrogen', startBar, breathedBar, [atMin]);
  const one = now[Number(asked) - 1]!;
  const [lowBar, highBar] = [Math.min(startBar, breathedBar), Math.max(startBar, breathedBar)];
  const room = Math.max(0.1, (highBar - lowBar) * 0.08);
  const sayMin = (value: number) => (value < 10 ? `${atMost(value, 1)} min` : printHours(value * 60));

  const controls = (
    <>
      <TypedDepth label="Settled at" depthM={fromM} onDepth={(from) => set({ from })} />
      <TypedDepth label="Then at once at" depthM={toM} onDepth={(to) => set({ to })} />
      <Choice
        label="Compartment to follow"
        options={NUMBERS}
        value={asked}
        onChange={(next) => set({ compartment: Number(next) })}
      />
      <Segmented
        label="Time axis"
        segments={[
          { value: 'even', label: 'even' },
          { value: 'doubling', label: 'doubling' },
        ]}
        value={axis}
        onChange={(next) => set({ axis: next })}
      />
    </>
  );

  return (
    <>
      <PlateSheet controls={controls}>
        <CurveFigure
          title="A step in pressure, sixteen answers"
          sentence={`On air, settled at ${sayDepth(fromM, units)} and at once at ${sayDepth(toM, units)}: the nitrogen breathed goes from ${printPressure(startBar, units)} to ${printPressure(breathedBar, units)}.`}
          said={`After ${sayMin(atMin)} compartment ${asked} (half-time ${one.halfTimeMin} min) has followed ${printPercent(one.share[0]!, 1)} of the step and holds ${printPressure(one.tensionBar[0]!, units)}.`}
          picture={(width, height) => (
            <CurvePlot
              width={width}
              height={height}
              across={across}
              down={pressureAxis('Nitrogen held', lowBar - room, highBar + room, units)}
              curves={answers.map(({ compartment, tensionBar }) => ({
                id: String(compartment),
                look: 0,
                tone: 'gas',
                weight: String(compartment) === asked ? 'heavy' : 'fine',
                points: minutes.map((at, i) => [at, tensionBar[i]!] as const),
                endName: String(compartment),
              }))}
              dots={one.afterHalfTimesMin.map((at, n) => ({
                at: [at, startBar + (breathedBar - startBar) * shareAfterHalfTimes(n + 1)] as const,
                look: 0,
                open: true,
              }))}
              rules={
                [
                  { along: 'down', at: breathedBar, name: 'breathed now' },
                  { along: 'down', at: startBar, name: 'held before' },
                ].filter(({ at }, i) => i === 0 || at !== breathedBar) as { along: 'down'; at: number; name: string }[]
              }
              cursor={{
                along: 'across',
                at: atMin,
                hits: [{ at: [atMin, one.tensionBar[0]!], look: 0 }],
                onMove: (at) => set({ place: Math.round(along(at) * PLACES) }),
              }}
            />
          )}
          columns={[
            { heading: 'Compartment', cell: (answer: StepResponse) => answer.compartment },
            { heading: 'Half-time', numeric: true, cell: ({ halfTimeMin }) => `${halfTimeMin} min` },
            {
              heading: `Followed after ${sayMin(atMin)}`,
              numeric: true,
              cell: ({ share }) => printPercent(share[0]!, 1),
            },
            { heading: 'Holds', numeric: true, cell: ({ tensionBar }) => printPressure(tensionBar[0]!, units) },
            {
              heading: 'After six half-times',
              numeric: true,
              cell: ({ afterHalfTimesMin }) => printHours(afterHalfTimesMin[HALF_TIMES_TO_SETTLE - 1]! * 60),
            },
          ]}
          rows={() => now}
          source="Haldane’s solution. Open rings: one, two, … six half-times of the compartment followed."
        >
          <CursorSlider
            label="Time to read"
            value={place}
            min={0}
            max={PLACES}
            step={1}
            shown={sayMin(atMin)}
            onChange={(next) => set({ place: next })}
          />
          <CurveReadings
            label={`After ${sayMin(atMin)}`}
            readings={[
              {
                id: asked,
                name: `Compartment ${asked}, after ${sayMin(atMin)}`,
                value: printPressure(one.tensionBar[0]!, units),
                note: `${printPercent(one.share[0]!, 1)} of the step followed`,
                why: (
                  <WhyCurve
                    about="this tension"
                    ask={() => ({
                      dive: stepDive(defaultSettings(), SITE.compartments, fromM, toM, atMin),
                      reading: `tension-${one.compartment}`,
                      where: `Settled at ${sayDepth(fromM, units)}, and ${sayMin(atMin)} at ${sayDepth(toM, units)}`,
                    })}
                  />
                ),
              },
            ]}
          />
        </CurveFigure>
      </PlateSheet>
      <DataTable
        caption={`After six half-times: compartment ${asked}, whose half-time is ${one.halfTimeMin} min`}
        captionShown
        columns={[
          { heading: 'Half-times', cell: (n: number) => n },
          { heading: 'Time', numeric: true, cell: (n) => sayMin(one.afterHalfTimesMin[n - 1]!) },
          { heading: 'Followed', numeric: true, cell: (n) => printPercent(shareAfterHalfTimes(n), 1) },
          { heading: 'Still to go', numeric: true, cell: (n) => printPercent(1 - shareAfterHalfTimes(n), 1) },
        ]}
        rows={[1, 2, 3, 4, 5, 6]}
      />
    </>
  );
}
