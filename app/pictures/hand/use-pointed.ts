import { useState, type PointerEvent } from 'react';

/** Where a pointer is in a picture, in picture units from the inner edge. */
export interface Pointed {
  readonly x: number;
  readonly y: number;
}

interface Margin {
  readonly left: number;
  readonly top: number;
}

/** Where in a picture `width` wide an event is. */
export function placeIn(
  event: Pick<PointerEvent<SVGSVGElement>, 'currentTarget' | 'clientX' | 'clientY'>,
  margin: Margin,
  width: number,
): Pointed {
  const box = event.currentTarget.getBoundingClientRect();
  const scale = width / (box.width || width);
  return { x: (event.clientX - box.left) * scale - margin.left, y: (event.clientY - box.top) * scale - margin.top };
}

/**
 * What a pointer over a picture `width` wide points at, and the handlers its SVG needs. `onPress` is called for every place the
 * pointer is pressed at or dragged to. A finger points only while it is down.
 */
export function usePointed(margin: Margin, width: number, onPress?: (at: Pointed) => void) {
  const [pointed, setPointed] = useState<Pointed>();
  const handlers = {
    onPointerDown: (event: PointerEvent<SVGSVGElement>) => {
      if (onPress) event.currentTarget.setPointerCapture(event.pointerId);
      const at = placeIn(event, margin, width);
      setPointed(at);
      onPress?.(at);
    },
    onPointerMove: (event: PointerEvent<SVGSVGElement>) => {
      const at = placeIn(event, margin, width);
      setPointed(at);
      if (event.buttons === 1) onPress?.(at);
    },
    onPointerUp: (event: PointerEvent<SVGSVGElement>) => {
      if (event.pointerType === 'touch') setPointed(undefined);
    },
    onPointerLeave: () => setPointed(undefined),
    onPointerCancel: () => setPointed(undefined),
  };
  return { pointed, handlers };
}
