'use client';

import { useMemo } from 'react';
import { depthLadder } from '@/lib/curves/curve-site';
import { conventionEffect, modelNoStopCurve } from '@/lib/curves/model-curves';
import { modelTimeline } from '@/lib/curves/model-timeline';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, sampleAt, siteOf } from '@/lib/dive/timeline';
import { printDepth, sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { printRate } from '@/lib/quantity/rate';
import { usePreferences } from '../../parts/preferences';
import { printAs } from '@/lib/sayings/measures';
import { usePlate } from '../chosen/atlas-store';
import { CurveFigure } from '../plot/CurveFigure';
import { CurveKey } from '../plot/CurveKey';
import { CurvePlot } from '../plot/CurvePlot';
import { CurveReadings } from '../CurveReadings';
import { CursorSlider, ontoStep } from '../plot/CursorSlider';
import { DepthField, TimeField } from '../chosen/DiveFields';
import { DOWN_M_MIN, setDownAt, UP_M_MIN } from '../chosen/curve-wish';
import { depthAxis, depthStep, evenAxis, tableDepths } from '../../pictures/axes/plot-axis';
import { DESCRIBED_MODELS } from './described-models';
import { MODELS } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { WhyCurve } from '../WhyCurve';
import styles from '../curves.module.css';
import { DEEPEST_M, LONGEST_MIN } from './plate-bounds';
import { SAME_INSTANT_S } from '@/lib/dive/sample-instants';

const SHALLOWEST_M = 9;
const MOST = 420;
const LADDER = depthLadder(SHALLOWEST_M, DEEPEST_M, 0.5);
const SITE = siteOf({ settings: defaultSettings(), steps: [], lines: [] });

/** The same dive by every model, and what changed from each to the next. */
export function ModelsSection() {
  const units = usePreferences((state) => state.units);
  const [{ off, at: cursorM, depth: depthM, time: timeS, atTime: placeS }, set] = usePlate('models', MODELS);
  const models = DESCRIBED_MODELS.map((one, look) => ({ ...one, look })).filter(({ model }) => !off.includes(model.id));
  const step = depthStep(units);
  const readM = ontoStep(cursorM, SHALLOWEST_M, DEEPEST_M, step);
  const at = models.map(({ model }) => modelNoStopCurve(model, SITE, [readM]).minutes[0]!);
  const timeline = useMemo(() => computeTimeline(squareDive(depthM, timeS), 20), [depthM, timeS]);
  const ceilings = useMemo(() => DESCRIBED_MODELS.map(({ model }) => modelTimeline(model, timeline)), [timeline]);
  const lastS = timeline.timeS[timeline.length - 1]!;
  const everyS = Math.max(20, Math.round(lastS / 120 / 20) * 20);
  const nowS = Math.min(placeS, lastS);
  const sample = sampleAt(timeline, nowS + SAME_INSTANT_S);
  const legend = <CurveKey entries={models.map(({ model, look }) => ({ name: model.name, look }))} />;
  const deepest = models.reduce((most, { look }) => Math.max(most, ...ceilings[look]!.ceilingM), depthM);
  const minute = (s: number) => s / 60;

  const controls = (
    <>
      <fieldset className={styles.checks}>
        <legend>Models laid over each other</legend>
        {DESCRIBED_MODELS.map(({ model: { id, name } }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={!off.includes(id)}
              onChange={() => set({ off: off.includes(id) ? off.filter((one) => one !== id) : [...off, id] })}
            />
            {name}
          </label>
        ))}
      </fieldset>
      <DepthField label="Depth of the dive" value={depthM} onValue={(depth) => set({ depth })} />
      <TimeField label="Time at that depth" value={timeS} onValue={(time) => set({ time })} />
    </>
  );

  return (
    <>
      <PlateSheet controls={controls}>
        <div className={styles.pair}>
          <CurveFigure
            title="No-stop times by each model"
            beside
            most={MOST}
            sentence={`On air, rested, from arriving at depth, each by its makers’ own limits without gradient factors.`}
            said={`${models.length === 0 ? 'Choose a model to see its times.' : `At ${sayDepth(readM, units)}: ${models.map(({ model }, i) => `${model.name} ${printAs('noStopLimitMin', at[i]!, units)}`).join(', ')}.`}`}
            picture={(width, height) => (
              <CurvePlot
                width={width}
                height={height}
                across={evenAxis('No-stop time, min', 0, LONGEST_MIN)}
                down={depthAxis(SHALLOWEST_M, DEEPEST_M, units)}
                grows="down"
                curves={models.map(({ model, look }) => {
                  const { minutes } = modelNoStopCurve(model, SITE, LADDER);
                  return {
                    id: model.id,
                    look,
                    marked: true,
                    endName: model.name,
                    points: Array.from(LADDER, (depth, i) => [minutes[i]!, depth] as const),
                  };
                })}
                cursor={{
                  along: 'down',
                  at: readM,
                  onMove: (at) => set({ at }),
                  hits: models.map(({ look }, i) => ({ at: [at[i]!, readM] as const, look })),
                }}
              />
            )}
            columns={[
              { heading: 'Depth', cell: (depth: number) => sayDepth(depth, units) },
              ...models.map(({ model }) => ({
                heading: model.name,
                numeric: true,
                cell: (depth: number) =>
                  printAs('noStopExactMin', modelNoStopCurve(model, SITE, [depth]).minutes[0]!, units),
              })),
            ]}
            rows={() => tableDepths(SHALLOWEST_M, DEEPEST_M, units)}
            source={models
              .map(({ description }) => description.source)
              .filter((source, i, all) => all.indexOf(source) === i)
              .join('; ')}
          >
            <CursorSlider
              label="Depth to compare at"
              value={readM}
              min={SHALLOWEST_M}
              max={DEEPEST_M}
              step={step}
              shown={sayDepth(readM, units)}
              onChange={(next) => set({ at: next })}
            />
            <CurveReadings
              label={`By each model at ${sayDepth(readM, units)}`}
              readings={models.map(({ model, description, look }, i) => ({
                id: model.id,
                name: model.name,
                look,
                value: printAs('noStopLimitMin', at[i]!, units),
                why: (
                  <WhyCurve
                    about={`the time by ${model.name}`}
                    ask={() => ({
                      dive: setDownAt(readM, defaultSettings()),
                      reading: { model, conventions: description.conventions },
                      where: `On air, rested, arriving at ${sayDepth(readM, units)}`,
                    })}
                  />
                ),
              }))}
            />
          </CurveFigure>
          <CurveFigure
            title="Ceilings over the same dive"
            beside
            most={MOST}
            sentence={`${sayDepth(depthM, units)} for ${writeTime(timeS)} on air, down at ${printRate(DOWN_M_MIN, units)} and straight up at ${printRate(UP_M_MIN, units)}, stops or not, to see each ceiling against it.`}
            said={`${models.length === 0 ? 'Choose a model to see its ceiling.' : `${Math.round(minute(nowS))} min in: ${models.map(({ model, look }) => `${model.name} ${sayCeiling(ceilings[look]!.ceilingM[sample]!, units)}`).join(', ')}.`}`}
            picture={(width, height) => (
              <CurvePlot
                width={width}
                height={height}
                across={evenAxis('Time, min', 0, minute(lastS))}
                down={depthAxis(0, deepest * 1.05, units)}
                grows="down"
                curves={[
                  {
                    id: 'dive',
                    look: 0,
                    weight: 'heavy',
                    points: Array.from(timeline.timeS, (s, i) => [minute(s), timeline.depthM[i]!] as const),
                  },
                  ...models.map(({ model, look }) => ({
                    id: model.id,
                    look,
                    tone: 'stop' as const,
                    marked: true,
                    points: Array.from(timeline.timeS, (s, i) => [minute(s), ceilings[look]!.ceilingM[i]!] as const),
                  })),
                ]}
                cursor={{
                  along: 'across',
                  at: minute(nowS),
                  onMove: (min) => set({ atTime: min * 60 }),
                  hits: models.map(({ look }) => ({
                    at: [minute(nowS), ceilings[look]!.ceilingM[sample]!] as const,
                    look,
                  })),
                }}
              />
            )}
            legend={legend}
            columns={[
              { heading: 'Time', cell: (i: number) => `${Math.round(minute(timeline.timeS[i]!) * 10) / 10} min` },
              { heading: 'Depth', numeric: true, cell: (i: number) => printDepth(timeline.depthM[i]!, units) },
              ...models.map(({ model, look }) => ({
                heading: model.name,
                numeric: true,
                cell: (i: number) => sayCeiling(ceilings[look]!.ceilingM[i]!, units),
              })),
            ]}
            rows={() => Array.from({ length: 25 }, (_, i) => Math.round((i / 24) * (timeline.length - 1)))}
          >
            <CursorSlider
              label="Time of the dive to compare at"
              value={nowS}
              min={0}
              max={lastS}
              step={everyS}
              shown={`${Math.round(minute(nowS) * 10) / 10} min`}
              onChange={(atTime) => set({ atTime })}
            />
          </CurveFigure>
        </div>
      </PlateSheet>
      <h3>What changed in a century, and why</h3>
      <ol className={styles.century}>
        {DESCRIBED_MODELS.map(({ model, description }) => {
          const { ownMin, underZhL16Min } = conventionEffect(model, SITE, readM);
          return (
            <li key={model.id}>
              <h4>
                {model.name === description.name && /\d{4}$/.test(model.name)
                  ? model.name
                  : `${model.name}, ${model.year}`}
              </h4>
              <p>{description.limit}</p>
              <ul>
                {description.changed.map(({ what, why, obtained }) => (
                  <li key={what}>
                    {what} {why} <small>({obtained})</small>
                  </li>
                ))}
              </ul>
              <p className={styles.source}>
                {description.conventions.airNitrogen.text} {description.conventions.lungOffsetBar.text}{' '}
                {ownMin !== underZhL16Min && Number.isFinite(ownMin) && Number.isFinite(underZhL16Min)
                  ? `At ${sayDepth(readM, units)} that is ${printAs('noStopExactMin', ownMin, units)} in place of ${printAs('noStopExactMin', underZhL16Min, units)} with moist lungs: convention, not caution.`
                  : ''}
              </p>
            </li>
          );
        })}
      </ol>
      <p>
        A longer time is not a worse model, nor a shorter one a better: each was judged against its own dives, and none
        of them against yours.
      </p>
    </>
  );
}

function squareDive(toM: number, stayS: number): Dive {
  return {
    settings: { ...defaultSettings(), gradientFactors: { low: 1, high: 1 } },
    steps: [
      { kind: 'descend', toM, durationS: (toM / DOWN_M_MIN) * 60 },
      { kind: 'stay', durationS: stayS },
      { kind: 'ascend', toM: 0, durationS: (toM / UP_M_MIN) * 60 },
    ],
    lines: [],
  };
}

function sayCeiling(depthM: number, units: Parameters<typeof sayDepth>[1]): string {
  return depthM > 0 ? printAs('ceilingM', depthM, units) : 'no ceiling';
}
