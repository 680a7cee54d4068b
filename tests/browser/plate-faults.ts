import type { Page } from 'playwright-core';

/** Text in a plate this many pixels tall or more can be read; on a phone it is held nearer. */
const LEAST_PX = { phone: 12, elsewhere: 13 };
/** WCAG 2.2, 1.4.3: text of ordinary size against what it stands on. */
const LEAST_CONTRAST = 4.5;

/**
 * What is wrong with the words of the pictures that stand on the page, one line each: drawn too small, over one another, cut off
 * by the plate's edge, or hard to tell from their ground. Measured as drawn, whatever a plate was scaled to.
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
      const faults: string[] = [];
      const plates = [...document.querySelectorAll('figure svg, [data-picture] svg')].filter(
        (svg) => svg.checkVisibility() && svg.getBoundingClientRect().width > 100,
      );
      for (const svg of new Set(plates)) {
        const plate = svg.getBoundingClientRect();
        const name =
          svg.closest('[data-picture]')?.getAttribute('data-picture') ||
          svg.closest('figure')?.getAttribute('aria-label') ||
          svg.closest('figure')?.querySelector('h2, h3')?.textContent ||
          'a plate';
        const scale = plate.width / ((svg as SVGSVGElement).viewBox.baseVal.width || plate.width);
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
            box.top < plate.top - 1 ||
            box.bottom > plate.bottom + 1
          )
            faults.push(`${said} is cut`);
          // On a mark of its own a word has that for its ground.
          const mark = text.previousElementSibling;
          const onMark = mark && /rect|path|circle/.test(mark.tagName) && text.parentElement !== svg;
          const markBox = onMark && mark.getBoundingClientRect();
          const isOver =
            markBox &&
            markBox.left <= box.left + 1 &&
            markBox.right >= box.right - 1 &&
            markBox.height < 40 &&
            markBox.top <= box.top + box.height / 2 &&
            markBox.bottom >= box.top + box.height / 2;
          const markFill = isOver ? parts(getComputedStyle(mark).fill) : undefined;
          const ground = markFill && markFill[3]! > 250 ? markFill : groundOf(svg);
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
            if (across > 1 && down > 1)
              faults.push(`${name}: “${text.textContent.trim()}” lies over “${other.textContent.trim()}”`);
          }
        });
      }
      return [...new Set(faults)];
    },
    [leastPx, LEAST_CONTRAST] as const,
  );
}
