import { symbol, symbolCircle, symbolCross, symbolDiamond, symbolSquare, symbolTriangle } from 'd3';

/** Curves laid over each other are told apart by dash and by the shape of their marks, so that no colour is needed. */
export const MOST_CURVES = 5;

const DASHES = [undefined, '10 5', '2.5 4', '12 4 2.5 4', '18 6'] as const;
const SHAPES = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond, symbolCross] as const;

export function dashOf(look: number): string | undefined {
  return DASHES[look % DASHES.length];
}

/** Outline of the mark of a curve around the origin; `size` is its area in square picture units. */
export function shapeOf(look: number, size = 60): string {
  return symbol(SHAPES[look % SHAPES.length]!, size)() ?? '';
}
