'use client';

import { useMemo } from 'react';
import { curveSite, rested } from '@/lib/curves/curve-site';
import { USUAL_VARIATION, type Variation } from '@/lib/curves/variation';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive } from '@/lib/dive/dive';
import { parseDepth, sayDepth } from '@/lib/quantity/depth';
import { parsePercent, percentNumber } from '@/lib/quantity/percent';
import { quoted, refused, type Parsed } from '@/lib/quantity/parsed';
import { cautions } from '@/content/cautions';
import { usePreferences } from '../../parts/preferences';
import { TypedValue } from '../../parts/TypedValue';
import { usePlate } from '../chosen/atlas-store';
import { DepthField, FactorsField, GasField, TimeField } from '../chosen/DiveFields';
import { DOWN_M_MIN, UP_M_MIN } from '../chosen/curve-wish';
import type { SureJob } from '../slow-work/heavy-work';
import { HeavyStanding } from '../slow-work/HeavyStanding';
import { HOW_SURE, MOST_GAUGE_M, MOST_OFF } from '../chosen/later-choices';
import { PlateSheet } from './PlateSheet';
import { useHeavyWork } from '../slow-work/use-heavy-work';
import styles from '../curves.module.css';
import { LADDER, Bands } from './Bands';

/** A band in place of a line: how far a figure moves when what nobody knows exactly is a little different. */
export function HowSureSection() {
  const units = usePreferences((state) => state.units);
  const [values, set] = usePlate('how-sure', HOW_SURE);
  const { halfTimes, limits, gauge, start, gas, factors: gradientFactors, depth: depthM, time: timeS } = values;
  const variation = useMemo(
    (): Variation => ({ ...USUAL_VARIATION, halfTimes, limits, depthM: gauge, start }),
    [halfTimes, limits, gauge, start],
  );
  const job = useMemo((): SureJob => {
    const settings = { ...defaultSettings(), gas, gradientFactors };
    const conditions = { site: curveSite(settings), tissues: rested(settings), gas, gf: gradientFactors.high };
    const lengthS = timeS + depthM * 60 * (1 / DOWN_M_MIN + 1 / UP_M_MIN);
    return {
      kind: 'sure',
      conditions,
      depthsM: LADDER,
      dive: bottomDive(settings, depthM, timeS),
      everyS: Math.max(20, lengthS / 150),
      variation,
    };
  }, [gas, gradientFactors, depthM, timeS, variation]);
  const work = useHeavyWork(job);

  const controls = (
    <>
      <TypedValue
        label="Half-times off by"
        shown={`${percentNumber(variation.halfTimes)}%`}
        parse={parseOff}
        live
        onValue={(next) => set({ halfTimes: next })}
        hint="At most 10%"
      />
      <TypedValue
        label="Limits off by"
        shown={`${percentNumber(variation.limits)}%`}
        parse={parseOff}
        live
        onValue={(next) => set({ limits: next })}
        hint="Of the overpressure they allow"
      />
      <TypedValue
        label="Gauge off by"
        shown={sayDepth(variation.depthM, units)}
        parse={parseGaugeOff}
        live
        onValue={(next) => set({ gauge: next })}
      />
      <TypedValue
        label="Gas at the start off by"
        shown={`${percentNumber(variation.start)}%`}
        parse={parseOff}
        live
        onValue={(next) => set({ start: next })}
        hint="The flight, the night, the dive before"
      />
      <GasField value={gas} onValue={(next) => set({ gas: next })} />
      <FactorsField value={gradientFactors} onValue={(factors) => set({ factors })} />
      <DepthField label="Depth of the dive" value={depthM} onValue={(depth) => set({ depth })} />
      <TimeField label="Time at that depth" value={timeS} onValue={(time) => set({ time })} />
      <HeavyStanding what="the bands" work={work} />
    </>
  );

  return (
    <PlateSheet controls={controls}>
      {work.last && <Bands job={work.last.job} noStop={work.last.result.noStop} ceiling={work.last.result.ceiling} />}
      <p role="note" className={styles.note}>
        The band says what the model would say if its own numbers were a little off. It is not a margin of safety.{' '}
        {cautions.unknown}
      </p>
    </PlateSheet>
  );
}

function bottomDive(settings: Dive['settings'], toM: number, stayS: number): Dive {
  return {
    settings,
    steps: [
      { kind: 'descend', toM, durationS: (toM / DOWN_M_MIN) * 60 },
      { kind: 'stay', durationS: stayS },
      { kind: 'ascend', toM: 0, durationS: (toM / UP_M_MIN) * 60 },
    ],
    lines: [],
  };
}

function parseOff(text: string): Parsed<number> {
  const read = parsePercent(text);
  if (!read.ok) return read;
  if (read.value < 0 || read.value > MOST_OFF)
    return refused(`${quoted(text)} is not within what this band is for.`, 'Write 0% to 10%.');
  return read;
}

function parseGaugeOff(text: string): Parsed<number> {
  const read = parseDepth(text);
  if (read.ok && read.value > MOST_GAUGE_M)
    return refused(`${quoted(text)} is more than a gauge in use is off.`, `Write at most ${MOST_GAUGE_M} m.`);
  return read;
}
