// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { arrive, browserVisits, faultsInEitherTheme, sidewaysPx, type Visit } from './visit';

const visit = browserVisits();

type Options = Parameters<typeof visit>[0];

async function open(options: Options = {}): Promise<Visit> {
  const found = await visit(options);
  await found.page.addInitScript(() => {
    window.print = () => undefined;
  });
  await arrive(found.page, '/curves/');
  return found;
}

const map = (page: Page) => page.getByRole('figure', { name: 'Time to surface for each pair of gradient factors' });
const bands = (page: Page) => page.getByRole('figure', { name: 'No-stop time, as a band' });
const sentence = async (page: Page, figure: string) =>
  page.getByRole('figure', { name: figure, exact: true }).locator('figcaption p').textContent();

/** Both long pieces of work have come to their end. */
async function workedOut(page: Page): Promise<void> {
  await map(page).waitFor();
  await bands(page).waitFor();
}

describe('the curves', () => {
  it('are read by keyboard and by pointer, with nothing to complain of', { tags: 'every-run' }, async () => {
    const { page, complaints } = await open();
    await page.getByRole('slider', { name: 'Depth to read', exact: true }).first().press('ArrowRight');
    expect(await sentence(page, 'No-stop time against depth')).toContain('At 31 m');
    const picture = page
      .getByRole('figure', { name: 'No-stop time against depth', exact: true })
      .locator('svg')
      .first();
    const box = (await picture.boundingBox())!;
    await picture.click({ position: { x: box.width / 2, y: box.height - 50 } });
    expect(await sentence(page, 'No-stop time against depth')).toMatch(/At (59|60) m/);
    await workedOut(page);
    expect(complaints).toEqual([]);
  });

  it('answer why at the depth asked about', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Why this no-stop time?' }).first().click();
    const sheet = page.getByRole('dialog', { name: 'Why? No-stop time' });
    await sheet.locator('math').first().waitFor();
    expect(await sheet.textContent()).toContain('On arriving at 30 m');
  });

  it('are taken along as a file with the caution on it', async () => {
    const { page } = await open();
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save What each compartment tolerates as SVG' }).click();
    const download = await saved;
    expect(download.suggestedFilename()).toBe('halftime-what-each-compartment-tolerates.svg');
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const svg = Buffer.concat(chunks).toString('utf8');
    expect(svg).toContain('never to dive on');
    expect(svg).toContain('What each compartment tolerates');
  });
});

describe('the map of gradient factors', () => {
  it('is worked out beside the page, told as it goes, and drawn as contours', async () => {
    const { page } = await open();
    await map(page).waitFor();
    expect(await map(page).locator('[data-picture] svg path').count()).toBeGreaterThan(10);
    await page.locator('section#gradient-factors').getByText('Worked out: the map.').waitFor();
  });

  it('is stopped half-way, keeps the last, and is begun again to its end', async () => {
    const { page } = await open();
    const section = page.locator('section#gradient-factors');
    await map(page).waitFor();
    await section.getByRole('textbox', { name: 'Depth', exact: true }).fill('60 m');
    await section.getByRole('textbox', { name: 'Gas', exact: true }).fill('18/45');
    // The work takes half a second: the page itself must press the button, as soon as some of it is done.
    await section.evaluate((element) => {
      new MutationObserver((_, observer) => {
        if (!/Working out the map: [1-9]/.test(element.querySelector('[role="status"]')!.textContent)) return;
        observer.disconnect();
        Array.from(element.querySelectorAll('button'))
          .find((button) => button.textContent === 'Stop working out the map')!
          .click();
      }).observe(element, { subtree: true, childList: true, characterData: true });
    });
    await section.getByText('every 1%').click();
    await section.getByText('Stopped. The last one that was finished is shown').waitFor();
    expect(await sentence(page, 'Time to surface for each pair of gradient factors')).toContain('at 40 m on air');
    await section.getByText('every 5%').click();
    await section.getByText('Worked out: the map.').waitFor();
    expect(await sentence(page, 'Time to surface for each pair of gradient factors')).toContain('at 60 m on 18/45');
  });
});

describe('the screen of curves', () => {
  it('has no fault that axe can find in either theme, tables open and all', async () => {
    const { page } = await open();
    await page.getByRole('checkbox', { name: 'US Navy, Revision 7' }).check();
    await workedOut(page);
    for (const table of await page.getByText(/^Table of /).all()) await table.click();
    expect(await faultsInEitherTheme(page)).toEqual([]);
  });

  it('fits a window 390 px wide', async () => {
    const { page } = await open({ viewport: { width: 390, height: 844 } });
    await page.getByRole('checkbox', { name: 'US Navy, Revision 7' }).check();
    await workedOut(page);
    expect(await sidewaysPx(page)).toBe(0);
  });

  it('prints with the caution and without its controls', async () => {
    const { page } = await open();
    await workedOut(page);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('complementary', { name: 'Caution' }).isVisible()).toBe(true);
    expect(await page.getByRole('slider').first().isVisible()).toBe(false);
    expect(await page.getByRole('navigation', { name: 'On this page' }).isVisible()).toBe(false);
    expect(await bands(page).isVisible()).toBe(true);
  });

  it('prints one curve on a sheet of its own, with its table, cautions and watermark', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Print “Ceilings over the same dive”' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('heading', { level: 1, name: 'Ceilings over the same dive' }).isVisible()).toBe(true);
    expect(await page.getByRole('table', { name: 'Ceilings over the same dive' }).last().isVisible()).toBe(true);
    expect(await page.locator('[data-watermark]').textContent()).toContain(cautions.watermark);
    expect(await page.getByRole('figure', { name: 'No-stop time against depth' }).isVisible()).toBe(false);
  });
});
