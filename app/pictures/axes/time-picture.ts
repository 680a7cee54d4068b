import type { Timeline } from '@/lib/dive/timeline';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { PROFILE_MARGIN } from '../profile/profile-scales';
import { timeColumns } from './time-columns';
import { timeScale, type TimeScale } from './time-scale';

/** The frame of a picture that lies along the profile's time axis: the same left and right edges, so that moments line up. */
export interface TimePicture {
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly inner: { readonly width: number; readonly height: number };
  readonly timeline: Timeline;
  readonly x: TimeScale;
  /** The sample each pixel column stands for. */
  readonly columns: Int32Array;
}

export function timePicture(
  scene: Scene,
  width: number,
  height: number,
  rim: { top: number; bottom: number },
  view: PictureProps['view'],
): TimePicture {
  const margin = { ...rim, left: PROFILE_MARGIN.left, right: PROFILE_MARGIN.right };
  const inner = { width: Math.max(1, width - margin.left - margin.right), height: height - margin.top - margin.bottom };
  return { margin, inner, timeline: scene.timeline, ...timeAlong(scene, inner.width, view) };
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
export function columnAt({ columns }: TimePicture, x: number): number {
  return Math.min(Math.max(0, Math.round(x)), columns.length - 1);
}
