import { scaleLinear, type ScaleLinear } from 'd3';
import { ambientBarAt, type Site } from '@/lib/exposure/gas-depths';
import type { Gas } from '@/lib/physics/gas';

/** What the pictures of a water column are drawn from. */
export interface ColumnProps {
  readonly gases: readonly Gas[];
  readonly depthM: number;
  readonly site: Site;
  readonly width: number;
  readonly height: number;
}

export const COLUMN_MARGIN = { top: 44, right: 12, bottom: 12, left: 48 };

/** The deepest a picture goes, m: somewhat past the depth that is asked about. */
export function deepestShownM(depthM: number): number {
  return Math.max(12, depthM * 1.25);
}

/** Depth downward within a picture. */
export function depthScale(depthM: number, height: number): ScaleLinear<number, number> {
  return scaleLinear([0, deepestShownM(depthM)], [0, height - COLUMN_MARGIN.top - COLUMN_MARGIN.bottom]);
}

/** The most ambient pressure a picture shows, bar. */
export function mostBar(depthM: number, site: Site): number {
  return ambientBarAt(deepestShownM(depthM), site);
}
