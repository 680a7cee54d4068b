import type { Page } from 'playwright-core';

/** Text in a plate this many pixels tall or more can be read; on a phone it is held nearer. */
const LEAST_PX = { phone: 12, elsewhere: 13 };
/** WCAG 2.2, 1.4.3: text of ordinary size against what it stands on. */
const LEAST_CONTRAST = 4.5;

/**
 * What is wrong with the words of the pictures that stand on the page, one line each: drawn too small, over one another, cut off
 * by the plate's edge, struck by the cursor, or hard to tell from their ground. Measured as drawn, whatever a plate was scaled to.
 */
export async function plateFaults(page: Page): Promise<string[]> {
  const leastPx = page.viewportSize()!.width < 600 ? LEAST_PX.phone : LEAST_PX.elsewhere;
  return page.evaluate(
    ([least, leastContrast]) => {
      const context = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
      /** Red, green, blue and opacity, 0–255, of any colour CSS knows. */
      const parts = (colour: string): number[] => {
        context.clearRect(0, 0, 1, 1);
        context.fillStyle = colour;
        context.fillRect(0, 0, 1, 1);
        return [...context.getImageData(0, 0, 1, 1).data];
      };
      const luminance = (colour: number[]) => {
        const [red, green, blue] = colour.map((value) =>
          value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4,
        );
        return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
      };
      const groundOf = (element: Element | null): number[] => {
        for (let at = element; at; at = at.parentElement) {
          const colour = parts(getComputedStyle(at).backgroundColor);
          if (colour[3]! > 250) return colour;
        }
        return [255, 255, 255, 255];
      };
      /** What a shape is filled with; a pattern by its ground. */
      const filled = (shape: Element): number[] | undefined => {
        const { fill, fillOpacity } = getComputedStyle(shape);
        const pattern = /url\("?#([^")]+)"?\)/.exec(fill)?.[1];
        const tile = pattern && document.getElementById(pattern)?.querySelector('rect');
        if (tile) return parts(getComputedStyle(tile).fill);
        return fill === 'none' || pattern || Number(fillOpacity) < 1 ? undefined : parts(fill);
      };
      /** What words stand on: their own halo, else the last shape drawn under them, else the sheet. */
      const under = (text: SVGTextElement, svg: Element, shapes: readonly SVGGeometryElement[]): number[] => {
        const { paintOrder, stroke, strokeWidth } = getComputedStyle(text);
        if (paintOrder.startsWith('stroke') && stroke !== 'none' && parseFloat(strokeWidth) >= 3) return parts(stroke);
        const { left, top, width, height } = text.getBoundingClientRect();
        const middle = new DOMPoint(left + width / 2, top + height / 2);
        const beneath = shapes.findLast((shape) => {
          const matrix = shape.getScreenCTM();
          const before = shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING;
          if (!matrix || !before || !shape.checkVisibility() || (filled(shape)?.[3] ?? 0) <= 250) return false;
          return shape.isPointInFill(middle.matrixTransform(matrix.inverse()));
        });
        return beneath ? filled(beneath)! : groundOf(svg);
      };
      const faults: string[] = [];
      const plates = [...document.querySelectorAll('svg:has(text)')].filter(
        (svg) => svg.checkVisibility() && svg.getBoundingClientRect().width > 100,
      );
      for (const svg of plates) {
        const plate = svg.getBoundingClientRect();
        const name =
          svg.closest('[data-picture]')?.getAttribute('data-picture') ||
          svg.closest('figure')?.getAttribute('aria-label') ||
          svg.closest('figure')?.querySelector('h2, h3')?.textContent ||
          'a plate';
        const scale = plate.width / ((svg as SVGSVGElement).viewBox.baseVal.width || plate.width);
        const shapes = [...svg.querySelectorAll<SVGGeometryElement>('rect, path, circle')].filter(
          (shape) => !shape.closest('defs, clipPath'),
        );
        const words = [...svg.querySelectorAll('text')]
          .filter((text) => text.checkVisibility() && text.textContent.trim() !== '')
          .map((text) => ({ text, box: text.getBoundingClientRect(), style: getComputedStyle(text) }))
          .filter(({ box }) => box.width > 0);
        for (const { text, box, style } of words) {
          const said = `${name}: “${text.textContent.trim()}”`;
          const px = parseFloat(style.fontSize) * scale;
          if (px < least - 0.05) faults.push(`${said} is ${px.toFixed(1)} px`);
          if (
            box.left < plate.left - 1 ||
            box.right > plate.right + 1 ||
            // A box is taller than its letters.
            box.top + 0.15 * box.height < plate.top - 1 ||
            box.bottom - 0.08 * box.height > plate.bottom + 1
          )
            faults.push(`${said} is cut`);
          const cursor = svg.querySelector('g[class*="cursor"] > line');
          const line = cursor?.getBoundingClientRect();
          if (
            line &&
            cursor!.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_PRECEDING &&
            Math.min(line.bottom, box.bottom) - Math.max(line.top, box.top) > 0.4 * box.height &&
            line.left > box.left + 1 &&
            line.left < box.right - 1
          )
            faults.push(`${said} is struck by the cursor`);
          const ground = under(text, svg, shapes);
          const [light, dark] = [luminance(parts(style.fill)), luminance(ground)].sort((a, b) => b - a);
          const contrast = (light! + 0.05) / (dark! + 0.05);
          if (contrast < leastContrast) faults.push(`${said} has a contrast of ${contrast.toFixed(1)}`);
        }
        words.forEach(({ text, box }, index) => {
          for (const { text: other, box: its } of words.slice(index + 1)) {
            const across = Math.min(box.right, its.right) - Math.max(box.left, its.left);
            // A box is taller than its letters: a line of them is some seven tenths of it.
            const tall = 0.15 * Math.min(box.height, its.height);
            const down = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top) - 2 * tall;
            // The same word at the same place, drawn stronger, is one to the eye.
            const again = other.textContent === text.textContent && Math.abs(box.left - its.left) < 2;
            if (across > 1 && down > 1 && !again)
              faults.push(`${name}: “${text.textContent.trim()}” lies over “${other.textContent.trim()}”`);
          }
        });
      }
      return [...new Set(faults)];
    },
    [leastPx, LEAST_CONTRAST] as const,
  );
}
