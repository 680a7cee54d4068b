import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { MapPalette } from './map-palette';
import type { SupersaturationColumns } from './supersaturation-columns';

interface MapPlace {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
}

/** What a map is first painted on, small; kept between paintings. */
export interface MapBrush {
  canvas?: HTMLCanvasElement;
  image?: ImageData;
}

/**
 * Paints sixteen rows of supersaturation over time, the fast compartments on top: one pixel to a column and a row,
 * stretched over the canvas, and over it, outlined and hatched, what is past its limit.
 */
export function paintMap(
  canvas: HTMLCanvasElement,
  brush: MapBrush,
  columns: SupersaturationColumns,
  palette: MapPalette,
  place: MapPlace,
): void {
  const { width, height, pixelRatio } = place;
  const count = columns.limit.length;
  resize(canvas, Math.round(width * pixelRatio), Math.round(height * pixelRatio));
  const context = canvas.getContext('2d');
  const small = (brush.canvas ??= document.createElement('canvas'));
  resize(small, count, COMPARTMENTS);
  const smallContext = small.getContext('2d');
  if (!context || !smallContext) return;
  if (brush.image?.width !== count) brush.image = new ImageData(count, COMPARTMENTS);
  fillShades(brush.image, columns, palette);
  smallContext.putImageData(brush.image, 0, 0);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.imageSmoothingEnabled = false;
  context.drawImage(small, 0, 0, canvas.width, canvas.height);
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  const row = height / COMPARTMENTS;
  paintOver(context, columns, palette, width / count, row);
  context.fillStyle = palette.paper;
  for (let c = 1; c < COMPARTMENTS; c += 1) context.fillRect(0, c * row - 0.5, width, 1);
}

function resize(canvas: HTMLCanvasElement, width: number, height: number): void {
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
}

function fillShades(
  image: ImageData,
  { values, limit }: SupersaturationColumns,
  { shades, overPixel }: MapPalette,
): void {
  const count = limit.length;
  const pixels = new Uint32Array(image.data.buffer);
  const darkest = shades.length - 1;
  for (let column = 0; column < count; column += 1) {
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const value = values[column * COMPARTMENTS + c]!;
      const shade = value <= 0 ? 0 : Math.min(darkest, Math.max(1, Math.round(value * darkest)));
      pixels[c * count + column] = value > limit[column]! ? overPixel : shades[shade]!;
    }
  }
}

/** Stripes across every stretch past its limit, so that it stands out without its colour. */
function paintOver(
  context: CanvasRenderingContext2D,
  { values, limit }: SupersaturationColumns,
  palette: MapPalette,
  columnWidth: number,
  row: number,
): void {
  const count = limit.length;
  context.save();
  context.beginPath();
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    let from = -1;
    for (let column = 0; column <= count; column += 1) {
      const over = column < count && values[column * COMPARTMENTS + c]! > limit[column]!;
      if (over && from < 0) from = column;
      if (!over && from >= 0) {
        context.rect(from * columnWidth, c * row, (column - from) * columnWidth, row);
        from = -1;
      }
    }
  }
  context.clip();
  context.beginPath();
  const reach = count * columnWidth;
  const tall = COMPARTMENTS * row;
  for (let x = -tall; x < reach; x += STRIPE_EVERY) {
    context.moveTo(x, tall);
    context.lineTo(x + tall, 0);
  }
  context.strokeStyle = palette.paper;
  context.lineWidth = 1.5;
  context.stroke();
  context.restore();
}

const STRIPE_EVERY = 7;
