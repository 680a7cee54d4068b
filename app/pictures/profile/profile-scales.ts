import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Timeline } from '@/lib/dive/timeline';
import { straightScale, type StraightScale } from '../../parts/straight-scale';
import { placeIn, type Pointed } from '../hand/use-pointed';
import type { PictureProps } from '../picture-props';
import { timeScale, type TimeScale } from '../axes/time-scale';

export const PROFILE_MARGIN = { top: 34, right: 18, bottom: 30, left: 52 };
/** The middle of the lane above the surface in which events are marked. */
export const EVENT_LANE_Y = -22;

/** The scales of a profile: shared by what is drawn, what is dragged and what is pointed at. */
export interface ProfileScales {
  readonly inner: { readonly width: number; readonly height: number };
  readonly x: TimeScale;
  /** Metres to picture units, downward. */
  readonly y: StraightScale;
  readonly deepestM: number;
}

export function profileScales(
  timeline: Timeline,
  width: number,
  height: number,
  view?: PictureProps['view'],
  alsoTo = 6,
): ProfileScales {
  const inner = {
    width: width - PROFILE_MARGIN.left - PROFILE_MARGIN.right,
    height: height - PROFILE_MARGIN.top - PROFILE_MARGIN.bottom,
  };
  const deepestM = timeline.legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), Math.max(6, alsoTo));
  return {
    inner,
    x: timeScale(timeline, inner.width, view),
    y: straightScale([0, deepestM * 1.08], [0, inner.height]),
    deepestM,
  };
}

/** Depths to mark, m, at round figures of the reader's own unit. */
export function depthTicks(deepestM: number, units: UnitSystem, most = 7): number[] {
  const unitM = units === 'metric' ? 1 : METRES_PER_FOOT;
  const step = [3, 5, 10, 20, 25, 50, 100, 200].find((size) => deepestM / (size * unitM) <= most) ?? 500;
  const ticks: number[] = [];
  for (let depth = 0; depth * unitM <= deepestM * 1.04; depth += step) ticks.push(depth * unitM);
  return ticks;
}

/** Where a pointer is in a profile, in picture units from the inner edge. */
export const pointerIn = (svg: SVGSVGElement, { clientX, clientY }: Pick<MouseEvent, 'clientX' | 'clientY'>): Pointed =>
  placeIn({ currentTarget: svg, clientX, clientY }, PROFILE_MARGIN, svg.viewBox.baseVal.width);
