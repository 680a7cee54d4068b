import { scaleLinear, scaleLog, type ScaleContinuousNumeric, type ScaleLinear } from 'd3';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { atMost } from '@/lib/quantity/number';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { pressureTicks, pressureUnit } from './pressure-axis';
import { depthTicks } from '../profile/profile-scales';
import { DUST, stepsTo } from '@/lib/quantity/rounding';

export type PlotScale = ScaleContinuousNumeric<number, number>;

interface AxisTick {
  readonly at: number;
  readonly text: string;
}

/** One axis of a plot: what it measures, in the engine's units, and how it is marked in the reader's. */
export interface PlotAxis {
  readonly title: string;
  readonly scale: (range: readonly [number, number]) => PlotScale;
  /** About as many marks as are asked for. */
  readonly ticks: (about: number) => readonly AxisTick[];
}

/** Numbers on an even scale; `factor` turns the engine's unit into the one printed. */
export function evenAxis(title: string, from: number, to: number, factor = 1): PlotAxis {
  return {
    title,
    scale: (range) => scaleLinear([from, to], range),
    ticks: (about) =>
      scaleLinear([from * factor, to * factor], [0, 1])
        .ticks(about)
        .map((value) => ({ at: value / factor, text: atMost(value, 2) })),
  };
}

/** Minutes, each doubling as far as the one before. */
export function doublingAxis(title: string, from: number, to: number): PlotAxis {
  const marks = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000].filter((at) => at >= from && at <= to);
  return {
    title,
    scale: (range) => scaleLog([from, to], range),
    ticks: (about) =>
      marks
        .filter((_, i) => i % Math.ceil(marks.length / Math.max(2, about)) === 0)
        .map((at) => ({ at, text: String(at) })),
  };
}

/** Depth in the reader's unit, from the surface or lower. */
export function depthAxis(fromM: number, toM: number, units: UnitSystem): PlotAxis {
  return {
    title: `Depth, ${units === 'metric' ? 'm' : 'ft'}`,
    scale: (range) => scaleLinear([fromM, toM], range),
    ticks: (about) =>
      depthTicks(toM, units, about)
        .filter((at) => at >= fromM && at <= toM + DUST)
        .map((at) => ({ at, text: String(Math.round(units === 'metric' ? at : at / METRES_PER_FOOT)) })),
  };
}

export function pressureAxis(what: string, fromBar: number, toBar: number, units: UnitSystem): PlotAxis {
  return {
    title: `${what}, ${pressureUnit(units).name}`,
    scale: (range) => scaleLinear([fromBar, toBar], range),
    ticks: (about) =>
      pressureTicks(scaleLinear([fromBar, toBar], [0, 1]) as ScaleLinear<number, number>, units, about).map(
        ({ bar, text }) => ({ at: bar, text }),
      ),
  };
}

/** The reader's step of depth for a cursor or a ladder, m: metres, or tens of feet. */
export function depthStep(units: UnitSystem): number {
  return units === 'metric' ? 1 : 5 * METRES_PER_FOOT;
}

/** Depths for a table, m: every 3 m or every 10 ft. */
export function tableDepths(fromM: number, toM: number, units: UnitSystem): number[] {
  const stepM = units === 'metric' ? 3 : 10 * METRES_PER_FOOT;
  const depths: number[] = [];
  for (let n = stepsTo(fromM, stepM); n * stepM <= toM + DUST; n += 1) depths.push(n * stepM);
  return depths;
}
