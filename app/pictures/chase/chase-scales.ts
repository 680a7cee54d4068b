import { scaleLinear, scaleLog, type ScaleLinear, type ScaleLogarithmic } from 'd3';
import type { Scene } from '../scene';
import { floorBar } from '../axes/pressure-axis';
import { pressureRange } from '../compartment-states';

export interface ChaseScales {
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly inner: { readonly width: number; readonly height: number };
  /** Minutes of half-time. */
  readonly x: ScaleLogarithmic<number, number>;
  /** Bar, upward; the same for the whole dive. */
  readonly y: ScaleLinear<number, number>;
  /** Too narrow for whole words. */
  readonly narrow: boolean;
  /** Too low for words under the half-times. */
  readonly low: boolean;
}

export interface ChaseRange {
  readonly lowBar: number;
  readonly highBar: number;
}

const RANGE_STEP_BAR = 0.5;

/** The pressures the chase makes room for, in whole steps: while a dive is changed by hand they mostly stay. */
export function chaseRange(scene: Scene): ChaseRange {
  const { lowestBar, highestBar } = pressureRange(scene);
  return { lowBar: floorBar(lowestBar), highBar: Math.ceil((highestBar * 1.04) / RANGE_STEP_BAR) * RANGE_STEP_BAR };
}

/** Of a chase among others of its size, whose names and round pressures stand beside them all. */
export function smallChaseScales(
  halfTimesMin: Float64Array,
  { lowBar, highBar }: ChaseRange,
  inner: ChaseScales['inner'],
): ChaseScales {
  return {
    margin: { top: 0, right: 0, bottom: 0, left: 0 },
    inner,
    x: halfTimeScale(halfTimesMin, inner.width),
    y: scaleLinear([lowBar, highBar], [inner.height, 0]),
    narrow: true,
    low: true,
  };
}

export function chaseScales(
  halfTimesMin: Float64Array,
  { lowBar, highBar }: ChaseRange,
  width: number,
  height: number,
): ChaseScales {
  const narrow = width < 560;
  const low = height < 300;
  const margin = {
    ...(narrow ? { top: 24, right: 92, left: 34 } : { top: 26, right: 142, left: 46 }),
    bottom: low ? 42 : narrow ? 58 : 62,
  };
  const inner = { width: width - margin.left - margin.right, height: height - margin.top - margin.bottom };
  return {
    margin,
    inner,
    x: halfTimeScale(halfTimesMin, inner.width),
    y: scaleLinear([lowBar, highBar], [inner.height, 0]),
    narrow,
    low,
  };
}

/** Half-times in minutes along a width. */
export function halfTimeScale(halfTimesMin: Float64Array, width: number): ScaleLogarithmic<number, number> {
  return scaleLog([halfTimesMin[0]! * 0.8, halfTimesMin[15]! * 1.22], [0, width]);
}
