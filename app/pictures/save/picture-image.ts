import { cautions } from '@/content/cautions';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { embeddedFonts } from './embedded-fonts';
import { inlinedSvg } from './inlined-svg';
import { escaped } from './svg-text';
import { wrapped } from './wrapped';

/** Said on every picture, so that its numbers can be read wherever it ends up. */
const UNITS: Record<UnitSystem, string> = {
  metric: 'Depths in metres, pressures in bar, times in minutes.',
  imperial: 'Depths in feet, pressures in psi, times in minutes.',
};

const EDGE = 24;
const TITLE = { size: 22, weight: 700, line: 30 };
const WORDS = { size: 14, weight: 400, line: 20 };

/** Dots along the longer side of a picture, and the most that are made of one. */
const DOTS_ALONG = 2400;
const MOST_DOTS = 3;

export interface PictureImage {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** The parts of a figure that are drawn: drawings and canvases, not the signs on its buttons. */
function drawnParts(figure: Element): (SVGSVGElement | HTMLCanvasElement)[] {
  const plate = figure.querySelector('[data-picture]');
  if (!plate) return [];
  return Array.from(plate.querySelectorAll<SVGSVGElement | HTMLCanvasElement>('svg, canvas')).filter(
    (part) =>
      !part.parentElement?.closest('svg, button, label, table, li, p') && part.getBoundingClientRect().width > 100,
  );
}

/** A figure of the desk as a picture of its own: its title, the dive's, what it says, the units and the caution. */
export async function pictureImage(figure: HTMLElement, diveTitle: string, units: UnitSystem): Promise<PictureImage> {
  const parts = drawnParts(figure);
  const boxes = parts.map((part) => part.getBoundingClientRect());
  const left = Math.min(...boxes.map((box) => box.left));
  const top = Math.min(...boxes.map((box) => box.top));
  const across = Math.max(...boxes.map((box) => box.right)) - left;
  const down = Math.max(...boxes.map((box) => box.bottom)) - top;
  const looks = getComputedStyle(figure);
  const family = looks.fontFamily;
  const paper = getComputedStyle(document.documentElement).backgroundColor;

  const title = figure.getAttribute('aria-label') ?? '';
  const sentence = figure.querySelector('figcaption p')?.textContent ?? '';
  const measure = measured(family);
  const room = Math.max(300, across);
  const said = [...wrapped(diveTitle, room, measure), ...wrapped(sentence, room, measure)];
  // Cautions of the figure's own, such as that of staged stops, go along.
  const own = Array.from(figure.querySelectorAll('[role="note"]'), (note) => note.textContent);
  const foot = [UNITS[units], cautions.general, ...own].flatMap((text) => wrapped(text, room, measure));
  const headHeight = TITLE.line + said.length * WORDS.line + 8;
  const width = Math.ceil(room + 2 * EDGE);
  const height = Math.ceil(EDGE + headHeight + down + 12 + foot.length * WORDS.line + EDGE);

  const drawn = parts.map((part, index) => placed(part, boxes[index]!, EDGE - left, EDGE + headHeight - top)).join('');
  const fonts = await embeddedFonts(family, title + said.join('') + foot.join('') + drawn.replace(/<[^>]*>/g, ''));
  const lines = (texts: readonly string[], fromY: number) =>
    texts.map((text, index) => `<text x="${EDGE}" y="${fromY + index * WORDS.line}">${escaped(text)}</text>`).join('');
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" ` +
    `font-family="${escaped(family)}" font-size="${WORDS.size}" fill="${looks.color}">` +
    `<title>${escaped(title)}</title><desc>${escaped(`${sentence} ${cautions.general}`)}</desc>` +
    (fonts === '' ? '' : `<style>${fonts}</style>`) +
    `<rect width="${width}" height="${height}" fill="${paper}"/>` +
    `<text x="${EDGE}" y="${EDGE + TITLE.size}" font-size="${TITLE.size}" font-weight="${TITLE.weight}">${escaped(title)}</text>` +
    lines(said, EDGE + TITLE.line + WORDS.size + 4) +
    drawn +
    `<g font-weight="600">${lines(foot, EDGE + headHeight + down + 12 + WORDS.size)}</g>` +
    '</svg>\n';
  return { svg, width, height };
}

/** One drawn part, where it stands in the figure. */
function placed(part: SVGSVGElement | HTMLCanvasElement, box: DOMRect, byX: number, byY: number): string {
  const place = { x: box.left + byX, y: box.top + byY, width: box.width, height: box.height };
  if (part instanceof HTMLCanvasElement) {
    const where = Object.entries(place).map(([name, value]) => `${name}="${value}"`);
    return `<image ${where.join(' ')} preserveAspectRatio="none" href="${part.toDataURL('image/png')}"/>`;
  }
  const copy = inlinedSvg(part);
  for (const [name, value] of Object.entries(place)) copy.setAttribute(name, String(value));
  return new XMLSerializer().serializeToString(copy);
}

function measured(family: string): (line: string) => number {
  const context = document.createElement('canvas').getContext('2d');
  if (!context) return (line) => line.length * WORDS.size * 0.5;
  context.font = `600 ${WORDS.size}px ${family}`;
  return (line) => context.measureText(line).width;
}

/** The picture in dots, fine enough for a slide. */
export async function pngOf({ svg, width, height }: PictureImage): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const scale = Math.min(Math.max(1, DOTS_ALONG / Math.max(width, height)), MOST_DOTS);
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser has no canvas to draw on');
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the picture is too large for this browser'))),
      'image/png',
    );
  });
}
