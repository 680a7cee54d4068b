import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserVisits } from './visit';

const visit = browserVisits();

const SIZES = [
  [1920, 1080],
  [1440, 900],
  [1280, 720],
  [1024, 768],
  [820, 1180],
  [390, 844],
] as const;

const TOGETHER = [
  '[data-picture="profile"]',
  '[data-picture="chase"]',
  '[data-reading="no-stop"]',
  '[data-reading="ceiling"]',
  '[data-reading="required-stop"]',
  '[data-reading="rate"]',
  '[data-part="time"]',
  '[data-part="caution"]',
];

/** What of it is not wholly in the window, or lies under something; and the share of the window the pictures have, %. */
async function sheet(page: Page): Promise<{ faults: string[]; share: number; scrolls: number }> {
  return page.evaluate((selectors) => {
    const faults: string[] = [];
    let area = 0;
    for (const selector of selectors) {
      const element = document.querySelector(selector);
      const box = element?.getBoundingClientRect();
      if (!element || !box || box.width === 0) {
        faults.push(`${selector} is not there`);
        continue;
      }
      if (selector.includes('picture')) area += box.width * box.height;
      const inside =
        box.left >= -0.5 && box.top >= -0.5 && box.right <= innerWidth + 0.5 && box.bottom <= innerHeight + 0.5;
      if (!inside) faults.push(`${selector} is not wholly in the window`);
      for (const x of [0.02, 0.25, 0.5, 0.75, 0.98])
        for (const y of [0.05, 0.5, 0.95]) {
          const there = document.elementFromPoint(box.left + box.width * x, box.top + box.height * y);
          if (there && !element.contains(there) && !there.contains(element))
            faults.push(`${selector} lies under ${there.tagName} ${there.className}`);
        }
    }
    return {
      faults: [...new Set(faults)],
      share: (area / innerWidth / innerHeight) * 100,
      scrolls: document.documentElement.scrollHeight - innerHeight,
    };
  }, TOGETHER);
}

async function playing(page: Page): Promise<void> {
  await page.goto('/desk/#play=overstayed');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await page.getByText('Opened “Six minutes too long” to play.').waitFor();
}

describe.each(SIZES)('the desk on one sheet at %i × %i', (width, height) => {
  const least = width >= 1024 ? 45 : 0;

  it('has cause and effect in one look: playing, in either system, asked why, and before a class', async () => {
    const { page, complaints } = await visit({ viewport: { width, height } });
    await playing(page);
    const shown = await sheet(page);
    expect.soft(shown.faults, 'playing').toEqual([]);
    expect.soft(shown.share, 'playing').toBeGreaterThanOrEqual(least);
    expect.soft(shown.scrolls).toBeLessThanOrEqual(0);

    // On a phone the answer takes the window, and gives it back.
    if (width > 768) {
      await page.locator('[data-reading="no-stop"]').hover();
      await page.getByRole('button', { name: 'Why this no-stop time?', exact: true }).click();
      await page.locator('dialog[open] math').first().waitFor();
      const asked = await sheet(page);
      expect.soft(asked.faults, 'asked why').toEqual([]);
      expect.soft(asked.share, 'asked why').toBeGreaterThanOrEqual(width >= 1024 ? 40 : 0);
      await page.keyboard.press('Escape');
      await page.locator('dialog[open]').waitFor({ state: 'detached' });
    }

    await page.getByRole('button', { name: 'Present', exact: true }).click();
    await page.getByRole('group', { name: 'Presenting' }).waitFor();
    const presented = await sheet(page);
    expect.soft(presented.faults, 'presented').toEqual([]);
    expect.soft(presented.share, 'presented').toBeGreaterThanOrEqual(least);
    expect(complaints).toEqual([]);
  }, 90_000);

  it('has it in feet as well', async () => {
    const { page } = await visit({ viewport: { width, height }, preferences: { units: 'imperial' } });
    await playing(page);
    const { faults, share } = await sheet(page);
    expect.soft(faults).toEqual([]);
    expect(share).toBeGreaterThanOrEqual(least);
  });
});

it('nothing moves from start to end of a dive that plays', async () => {
  const { page } = await visit({ viewport: { width: 1024, height: 768 } });
  await playing(page);
  await page.evaluate(() => {
    const moved: string[] = [];
    Object.assign(window, { moved });
    interface Shift extends PerformanceEntry {
      readonly value: number;
      readonly sources: readonly { node: Node | null; previousRect: DOMRect; currentRect: DOMRect }[];
    }
    const told = ({ node, previousRect: from, currentRect: to }: Shift['sources'][number]) =>
      `${node?.parentElement?.outerHTML.slice(0, 300)} from ${from.x}, ${from.y} to ${to.x}, ${to.y}`;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Shift[])
        moved.push(`${entry.value}: ${entry.sources.map(told).join('; ')}`);
    }).observe({ type: 'layout-shift' });
  });
  await page.getByRole('combobox', { name: 'Speed' }).selectOption('120');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor({ timeout: 60_000 });
  expect(await page.evaluate(() => (window as unknown as { moved: string[] }).moved)).toEqual([]);
}, 90_000);

it('Space plays and pauses wherever no field has the focus, and Play is within five keys', async () => {
  const { page } = await visit();
  await page.goto('/desk/');
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  const script = page.getByRole('textbox', { name: 'Dive script' });
  await script.focus();
  await page.keyboard.press('Space');
  expect(await page.getByRole('button', { name: 'Pause' }).count()).toBe(0);
  await page.reload();
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  const reached: (string | null | undefined)[] = [];
  for (let press = 0; press < 5; press += 1) {
    await page.keyboard.press('Tab');
    reached.push(await page.evaluate(() => document.activeElement?.getAttribute('aria-label')));
  }
  expect(reached).toContain('Play');
});
