import { usePreferences } from '../../parts/preferences';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import type { PictureProps } from './picture-props';
import { usePictureScale } from './picture-scale';
import { useWidth } from './use-width';

/** What a picture on the desk is drawn from, at the width it has been given; `ref` goes on the element that has it. */
export function usePicture(height: (width: number) => number): PictureProps & { ref: React.RefObject<HTMLDivElement | null> } {
  const { ref, width: given } = useWidth<HTMLDivElement>(760);
  const scale = usePictureScale();
  const width = Math.round(given / scale);
  return {
    ref,
    width,
    height: height(width),
    scene: useDesk((state) => state.scene),
    sample: useDesk(cursorSample),
    cursorS: useDesk((state) => state.cursorS),
    onCursor: useDesk((state) => state.setCursor),
    view: useDesk((state) => state.view),
    units: usePreferences((state) => state.units),
  };
}
