import { interpolateLab, rgb } from 'd3';

/** The colours of a loading map, ready to be written into pixels. */
export interface MapPalette {
  /** 256 shades from no supersaturation to the model's own limit, as 32-bit pixels. */
  readonly shades: Uint32Array;
  readonly over: string;
  readonly overPixel: number;
  readonly paper: string;
  readonly ink: string;
}

const SHADES = 256;
/** Half of the way to the limit has this share of the darkness: low values stay telling apart from none. */
const FAINTEST = 0.12;

/**
 * Reads the page's colours off an element whose style names them: `color` the gas, `background-color` the paper,
 * `outline-color` the stop, `caret-color` the ink. The custom properties themselves don't say which theme is on.
 */
export function mapPalette(element: Element): MapPalette {
  const style = getComputedStyle(element);
  const shade = interpolateLab(style.backgroundColor, style.color);
  const shades = new Uint32Array(SHADES);
  for (let i = 1; i < SHADES; i += 1) shades[i] = pixel(shade(FAINTEST + ((1 - FAINTEST) * i) / (SHADES - 1)));
  shades[0] = pixel(style.backgroundColor);
  return {
    shades,
    over: style.outlineColor,
    overPixel: pixel(style.outlineColor),
    paper: style.backgroundColor,
    ink: style.caretColor,
  };
}

/** A colour as the four bytes of a pixel lie in memory. */
function pixel(colour: string): number {
  const { r, g, b } = rgb(colour);
  return new Uint32Array(new Uint8ClampedArray([r, g, b, 255]).buffer)[0]!;
}
