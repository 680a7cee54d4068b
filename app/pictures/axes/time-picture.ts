import type { Timeline } from '@/lib/dive/timeline';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { PROFILE_MARGIN } from '../profile/profile-scales';
import { timeColumns } from './time-columns';
import { recordScale, timeScale, type TimeScale } from './time-scale';

/** The frame of a picture over time, whether of a dive worked out or of one recorded. */
export interface TimeFrame {
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly inner: { readonly width: number; readonly height: number };
  /** Whose legs tell the dives of a day apart. */
  readonly timeline: Pick<Timeline, 'legs'>;
  readonly x: TimeScale;
  /** The sample each pixel column stands for. */
  readonly columns: Int32Array;
}

/** The frame of a picture that lies along the profile's time axis: the same left and right edges, so that moments line up. */
export interface TimePicture extends TimeFrame {
  readonly timeline: Timeline;
}

interface Rim {
  readonly top: number;
  readonly bottom: number;
}

export function timePicture(
  scene: Scene,
  width: number,
  height: number,
  rim: Rim,
  view: PictureProps['view'],
): TimePicture {
  const { margin, inner } = edges(width, height, rim);
  return { margin, inner, timeline: scene.timeline, ...timeAlong(scene, inner.width, view) };
}

/** The frame of one dive that was recorded at these times, s. */
export function recordFrame(timesS: ArrayLike<number>, width: number, height: number, rim: Rim): TimeFrame {
  const { margin, inner } = edges(width, height, rim);
  const x = recordScale(timesS[timesS.length - 1] ?? 60, inner.width);
  const columns = new Int32Array(Math.round(inner.width) + 1);
  let sample = 0;
  for (let column = 0; column < columns.length; column += 1) {
    const atS = x.invert(column);
    while (sample + 1 < timesS.length && Math.abs(timesS[sample + 1]! - atS) <= Math.abs(timesS[sample]! - atS))
      sample += 1;
    columns[column] = sample;
  }
  return { margin, inner, timeline: { legs: [] }, x, columns };
}

function edges(width: number, height: number, rim: Rim): Pick<TimeFrame, 'margin' | 'inner'> {
  const margin = { ...rim, left: PROFILE_MARGIN.left, right: PROFILE_MARGIN.right };
  const inner = { width: Math.max(1, width - margin.left - margin.right), height: height - margin.top - margin.bottom };
  return { margin, inner };
}

type TimeAlong = Pick<TimePicture, 'x' | 'columns'>;

const worked = new WeakMap<
  Scene,
  { readonly width: number; readonly view: PictureProps['view']; readonly along: TimeAlong }
>();

/** The time axis of a scene: pictures under one another have the same, so it is worked out once for all of them. */
function timeAlong(scene: Scene, width: number, view: PictureProps['view']): TimeAlong {
  const before = worked.get(scene);
  if (before && before.width === width && before.view === view) return before.along;
  const x = timeScale(scene.timeline, width, view);
  const along = { x, columns: timeColumns(scene.timeline, x, width) };
  worked.set(scene, { width, view, along });
  return along;
}

/** The column under a place in the picture, kept within it. */
export function columnAt({ columns }: TimeFrame, x: number): number {
  return Math.min(Math.max(0, Math.round(x)), columns.length - 1);
}
