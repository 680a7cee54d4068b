import { scaleLinear, scaleLog, type ScaleLinear, type ScaleLogarithmic } from 'd3';
import type { Scene } from '../scene';
import { floorBar } from './pressure-axis';
import { pressureRange } from './runners';

export interface ChaseScales {
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly inner: { readonly width: number; readonly height: number };
  /** Minutes of half-time. */
  readonly x: ScaleLogarithmic<number, number>;
  /** Bar, upward; the same for the whole dive. */
  readonly y: ScaleLinear<number, number>;
  /** Too narrow for whole words. */
  readonly narrow: boolean;
}

export function chaseScales(scene: Scene, width: number, height: number): ChaseScales {
  const narrow = width < 560;
  const margin = narrow ? { top: 24, right: 92, bottom: 58, left: 34 } : { top: 26, right: 142, bottom: 62, left: 46 };
  const inner = { width: width - margin.left - margin.right, height: height - margin.top - margin.bottom };
  const halfTimes = scene.timeline.compartments.nitrogenHalfTimeMin;
  const { lowestBar, highestBar } = pressureRange(scene);
  return {
    margin,
    inner,
    x: scaleLog([halfTimes[0]! * 0.8, halfTimes[15]! * 1.22], [0, inner.width]),
    y: scaleLinear([floorBar(lowestBar), highestBar * 1.04], [inner.height, 0]),
    narrow,
  };
}
