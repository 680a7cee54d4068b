import { scaleLinear, type ScaleLinear } from 'd3';
import type { Scene } from '../scene';
import { floorBar } from '../axes/pressure-axis';
import { pressureRange } from '../compartment-states';

export interface PressureScales {
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly inner: { readonly width: number; readonly height: number };
  /** Ambient pressure, bar. */
  readonly x: ScaleLinear<number, number>;
  /** Tension, bar, upward. */
  readonly y: ScaleLinear<number, number>;
}

export function pressureScales(scene: Scene, width: number, height: number): PressureScales {
  const margin = { top: 44, right: 104, bottom: 60, left: 46 };
  const inner = { width: Math.max(1, width - margin.left - margin.right), height: height - margin.top - margin.bottom };
  const { lowestBar, deepestBar, highestBar } = pressureRange(scene);
  const low = floorBar(Math.min(lowestBar, scene.timeline.surfaceBar * 0.9));
  return {
    margin,
    inner,
    x: scaleLinear([low, Math.max(deepestBar, scene.timeline.surfaceBar + 0.6) * 1.03], [0, inner.width]),
    y: scaleLinear([low, highestBar * 1.04], [inner.height, 0]),
  };
}
