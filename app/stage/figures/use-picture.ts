import { useMemo } from 'react';
import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import { useOverlay, useShownWays } from './use-overlay';
import type { PictureProps } from '../../pictures/picture-props';
import { usePictureScale } from '../../pictures/picture-scale';
import { useWidth } from '../../pictures/hand/use-width';

/** What a picture on the desk is drawn from, at the width it has been given; `ref` goes on the element that has it. */
export function usePicture(
  height: (width: number) => number,
): PictureProps & { ref: React.RefObject<HTMLDivElement | null>; measured: boolean } {
  const { ref, width: given, measured } = useWidth<HTMLDivElement>(760);
  const scale = usePictureScale();
  const width = Math.round(given / scale);
  const view = useDesk((state) => state.view);
  const endS = useDesk((state) => state.scene.timeline.timeS.at(-1)!);
  const overlayEndS = useOverlay()?.timeline.timeS.at(-1) ?? 0;
  const otherEndS = useShownWays().reduce((last, way) => Math.max(last, way.timeline.timeS.at(-1)!), overlayEndS);
  // A longer second dive makes room for itself in every picture, so that one moment stays in one place.
  const room = useMemo(() => (otherEndS > endS ? { startS: 0, endS: otherEndS } : undefined), [otherEndS, endS]);
  return {
    ref,
    measured,
    width,
    height: height(width),
    scene: useDesk((state) => state.scene),
    sample: useDesk(cursorSample),
    cursorS: useDesk((state) => state.cursorS),
    onCursor: useDesk((state) => state.setCursor),
    view: view ?? room,
    units: usePreferences((state) => state.units),
  };
}
