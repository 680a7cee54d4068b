// @module-tag in-turn
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { LESSON } from './every-page';
import { arrive, browserVisits, settled, sidewaysPx } from './visit';

const visit = browserVisits();

/** WCAG 2.2, 1.4.12: nothing is lost when a person's own sheet spaces the text so. */
const SPACED = `
  * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-block-end: 2em !important; }`;

/** A small phone; a phone with spaced text; and 1280 × 1024 enlarged to 400% (WCAG 2.2, 1.4.10). */
const LOOKS = [
  { width: 320, height: 640, spaced: false },
  { width: 390, height: 844, spaced: true },
  { width: 320, height: 256, spaced: false },
] as const;

const SCREENS: readonly { name: string; path: string; begin?: (page: Page) => Promise<void> }[] = [
  { name: 'desk', path: routes.desk.path },
  { name: 'a lesson’s first step', path: lessonPath(LESSON) },
  { name: 'bench', path: routes.bench.path },
  { name: 'curves', path: routes.curves.path },
  { name: 'bring', path: routes.bring.path },
  {
    name: 'workshop',
    path: workshopPath,
    begin: async (page) => {
      await page.getByRole('button', { name: 'New lesson' }).click();
      await page.getByRole('radio', { name: 'As text' }).waitFor();
    },
  },
  { name: 'joining a class', path: routes.class.path },
];

async function space(page: Page, spaced: boolean): Promise<void> {
  await page.evaluate(
    (rules) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(rules);
      // The policy of the site blocks a sheet written into the page, as it should.
      document.adoptedStyleSheets = rules === '' ? [] : [sheet];
    },
    spaced ? SPACED : '',
  );
}

/** Text a person cannot read to its end: cut by what holds it, without a title that has the whole of it. */
async function cutText(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const brief = (element: Element) => (element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 50);
    const boxes = [...document.querySelectorAll<HTMLElement>('body *:not(svg *)')].flatMap((element) => {
      const { overflowX, clipPath } = getComputedStyle(element);
      // What is only read out is cut to nothing on purpose.
      const readOut = element.closest('.spoken') !== null || clipPath.startsWith('inset');
      if (!/hidden|clip/.test(overflowX) || readOut || !element.checkVisibility()) return [];
      if (element.scrollWidth <= element.clientWidth + 1 || brief(element) === '' || element.title !== '') return [];
      return [`${element.tagName.toLowerCase()}.${element.getAttribute('class')}: ${brief(element)}`];
    });
    const drawn = [...document.querySelectorAll<SVGTextElement>('svg text')].flatMap((text) => {
      const svg = text.ownerSVGElement!;
      if (!text.checkVisibility() || brief(text) === '' || getComputedStyle(svg).overflowX === 'visible') return [];
      const [box, frame] = [text.getBoundingClientRect(), svg.getBoundingClientRect()];
      if (box.width < 2 || (box.left >= frame.left - 1 && box.right <= frame.right + 1)) return [];
      return [`drawn in ${svg.closest('[data-picture]')?.getAttribute('data-picture')}: ${brief(text)}`];
    });
    return [...boxes, ...drawn];
  });
}

/** What can be pressed and lies beside the window, save in a strip that is scrolled from side to side. */
async function outOfWindow(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('body :is(a, button, input, select, textarea)')].flatMap((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      if (width < 4 || !element.checkVisibility() || (left >= -1 && right <= innerWidth + 1)) return [];
      for (let holder = element.parentElement; holder; holder = holder.parentElement)
        if (/auto|scroll/.test(getComputedStyle(holder).overflowX)) {
          // A strip is scrolled from side to side only.
          if (holder.scrollWidth > holder.clientWidth && holder.scrollHeight <= holder.clientHeight + 1) return [];
        }
      return [
        `${element.getAttribute('aria-label') ?? (element.textContent ?? '').trim().slice(0, 40)} at ${Math.round(right)}`,
      ];
    }),
  );
}

/** Whether a part is in the window, wholly from top to bottom. */
async function inSight(page: Page, selector: string): Promise<boolean> {
  return page.evaluate((asked) => {
    const box = document.querySelector(asked)?.getBoundingClientRect();
    return box !== undefined && box.height > 0 && box.top >= -0.5 && box.bottom <= innerHeight + 0.5;
  }, selector);
}

it('in a small window, enlarged and with spaced text, nothing is cut and no page scrolls sideways', async () => {
  const { page } = await visit({ viewport: { width: 390, height: 844 } });
  for (const { name, path, begin } of SCREENS) {
    await arrive(page, path);
    await begin?.(page);
    for (const { width, height, spaced } of LOOKS) {
      await page.setViewportSize({ width, height });
      await space(page, spaced);
      await settled(page);
      const look = `${name} at ${width} × ${height}${spaced ? ', spaced' : ''}`;
      expect.soft(await outOfWindow(page), look).toEqual([]);
      expect.soft(await sidewaysPx(page), look).toBeLessThanOrEqual(0);
      expect.soft(await cutText(page), look).toEqual([]);
      if (path === routes.desk.path)
        for (const part of ['[data-part="time"]', '[data-reading="depth"]'])
          expect.soft(await inSight(page, part), `${part} of the ${look}`).toBe(true);
    }
  }
});
