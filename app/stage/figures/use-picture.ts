import { useContext, useMemo } from 'react';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { useOverlay, useShownWays } from './use-overlay';
import type { PictureProps } from '../../pictures/picture-props';
import { usePictureScale } from '../../pictures/picture-scale';
import { useSize } from '../../pictures/hand/use-size';
import { RoomContext } from './room';

/** A figure's width until it has been measured. */
const FIRST_PX = 760;
/** Room lower than this, as while a page is still being laid out, has no picture of its own height: its axes need as much. */
const LEAST_PX = 100;

/**
 * What a picture is drawn from, at the size it has been given; `ref` goes on the element that has it. Where it has no
 * room to fill, its height follows from its width. In the one that is `pulled`, the dive is drawn by hand.
 */
export function usePicture(
  height: (width: number) => number,
  pulled = false,
): PictureProps & { ref: React.RefObject<HTMLDivElement | null>; measured: boolean } {
  const { ref, size } = useSize<HTMLDivElement>();
  const fills = useContext(RoomContext) !== undefined;
  const scale = usePictureScale();
  const width = Math.round((size?.width ?? FIRST_PX) / scale);
  const view = useDesk((state) => state.view);
  const endS = useDeskOncePainted((state) => state.scene.timeline.timeS.at(-1)!, pulled);
  const overlayEndS = useOverlay()?.timeline.timeS.at(-1) ?? 0;
  const otherEndS = useShownWays().reduce((last, way) => Math.max(last, way.timeline.timeS.at(-1)!), overlayEndS);
  // A longer second dive makes room for itself in every picture, so that one moment stays in one place.
  const room = useMemo(() => (otherEndS > endS ? { startS: 0, endS: otherEndS } : undefined), [otherEndS, endS]);
  return {
    ref,
    measured: size !== undefined,
    width,
    height: fills && size && size.height > 0 ? Math.max(LEAST_PX, Math.round(size.height / scale)) : height(width),
    scene: useDeskOncePainted((state) => state.scene, pulled),
    sample: useDeskOncePainted(cursorSample, pulled),
    cursorS: useDeskOncePainted((state) => state.cursorS, pulled),
    onCursor: useDesk((state) => state.setCursor),
    view: view ?? room,
    units: usePreferences((state) => state.units),
  };
}
