// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { faultsInEitherTheme, arrive, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

const TABLE = '/gases/table/';

/** Whether something takes room on the page as it is. */
async function isDrawn(page: Page, selector: string): Promise<boolean> {
  const box = await page.locator(selector).last().boundingBox();
  return box !== null && box.width > 10 && box.height > 10;
}

describe('the screen of gases', () => {
  it('works in the browser: another gas is another column', { tags: 'every-run' }, async () => {
    const { page, complaints } = await visit();
    await arrive(page, '/gases/');
    await page.getByRole('textbox', { name: 'Gases side by side' }).fill('air, 36%');
    await page.getByRole('table', { name: 'Gases at 40 m' }).getByRole('columnheader', { name: '36%' }).waitFor();
    expect(await page.getByText(cautions.deepCourse).isVisible()).toBe(true);
    expect(complaints).toEqual([]);
  });
});

describe('the teaching table', () => {
  it('scrolls inside itself in a window 390 px wide', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 } });
    await arrive(page, TABLE);
    expect(await sidewaysPx(page)).toBe(0);
  });

  it('prints with its cautions and its watermark, and without its controls', async () => {
    const { page } = await visit();
    await arrive(page, TABLE);
    await page.emulateMedia({ media: 'print' });
    expect(await isDrawn(page, '[data-watermark]')).toBe(true);
    expect(await page.locator('[data-watermark]').textContent()).toContain(cautions.watermark);
    expect(await page.getByText(cautions.deepCourse).isVisible()).toBe(true);
    expect(await page.getByRole('complementary', { name: 'Caution' }).isVisible()).toBe(true);
    expect(await page.getByRole('table').isVisible()).toBe(true);
    expect(await page.getByLabel('Bottom times').isVisible()).toBe(false);
  });
});

describe('a run-time table from the desk', () => {
  async function openStaged(page: Page) {
    await page.addInitScript(() => {
      window.print = () => undefined;
    });
    await arrive(page, '/desk/');
    const choose = page.getByText('Choose pictures').locator('visible=true');
    // Where there is no room for it beside the pictures, the drawer is folded away.
    const folded = (await choose.count()) === 0;
    if (folded) await page.getByRole('button', { name: 'Script', exact: true }).click();
    await choose.click();
    for (const title of ['Oxygen', 'Cylinders', 'Staged stops', 'Helium and nitrogen'])
      await page.getByRole('checkbox', { name: title, exact: true }).check();
    if (folded) await page.getByRole('button', { name: 'Close the drawer' }).click();
  }

  it('is the only thing printed, under its cautions and its watermark', async () => {
    const { page } = await visit();
    await openStaged(page);
    await page.getByRole('button', { name: 'Print the run-time table' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('heading', { name: 'Run-time table' }).isVisible()).toBe(true);
    expect(await page.getByText(cautions.deepCourse).last().isVisible()).toBe(true);
    expect(await isDrawn(page, '[data-watermark]')).toBe(true);
    expect(await page.getByRole('figure', { name: 'The dive' }).isVisible()).toBe(false);
  });

  it('stands among pictures without a fault that axe can find in either theme, and fits a window 390 px wide', async () => {
    const { page } = await visit();
    await openStaged(page);
    await page.getByRole('button', { name: 'Add a cylinder of air' }).click();
    expect(await faultsInEitherTheme(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await sidewaysPx(page)).toBe(0);
  });
});
