// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { drawn } from './drawn';
import { plateFaults } from './plate-faults';
import { arrive, browserVisits, faultsInEitherTheme, sidewaysPx, type Visit } from './visit';

const visit = browserVisits();

type Options = Parameters<typeof visit>[0];

async function open(plate = '', options: Options = {}): Promise<Visit> {
  const found = await visit(options);
  await found.page.addInitScript(() => {
    window.print = () => undefined;
  });
  await arrive(found.page, `/curves/${plate}`);
  return found;
}

const map = (page: Page) => page.getByRole('figure', { name: 'Time to surface for each pair of gradient factors' });
const bands = (page: Page) => page.getByRole('figure', { name: 'No-stop time, as a band' });
const sentence = async (page: Page, figure: string) =>
  page.getByRole('figure', { name: figure, exact: true }).locator('figcaption p').first().textContent();

/** The plates of the atlas, by what follows the # of their address. */
const PLATES = ['no-stop', 'limits', 'half-times', 'ascent-rate', 'gradient-factors', 'models', 'how-sure'];

/** Opens a plate by its thumbnail and waits until what is worked out beside the page is there. */
async function openPlate(page: Page, plate: string): Promise<void> {
  await page.locator(`nav a[href="#${plate}"]`).click();
  await page.locator(`section#${plate} figure svg`).first().waitFor();
  if (plate === 'gradient-factors') await map(page).waitFor();
  if (plate === 'how-sure') await bands(page).waitFor();
}

describe('the curves', () => {
  it('are read by keyboard and by pointer, with nothing to complain of', { tags: 'every-run' }, async () => {
    const { page, complaints } = await open();
    await page.getByRole('slider', { name: 'Depth to read', exact: true }).first().press('ArrowRight');
    const said = page.getByRole('list', { name: /^No-stop times at/ });
    expect(await said.getAttribute('aria-label')).toBe('No-stop times at 31 m');
    const picture = page
      .getByRole('figure', { name: 'No-stop time against depth', exact: true })
      .locator('svg')
      .first();
    const box = (await picture.boundingBox())!;
    await picture.click({ position: { x: box.width / 2, y: box.height - 50 } });
    expect(await said.getAttribute('aria-label')).toMatch(/at (59|60) m$/);
    for (const plate of PLATES) await openPlate(page, plate);
    expect(complaints).toEqual([]);
  });

  it('answer why at the depth asked about', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Why the no-stop time of curve 1?' }).click();
    const sheet = page.getByRole('dialog', { name: 'Why? No-stop time' });
    await sheet.locator('math').first().waitFor();
    expect(await sheet.textContent()).toContain('On arriving at 30 m');
  });

  it('lie in one window: what is chosen, the plot and what it reads', async () => {
    for (const viewport of [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
    ]) {
      const { page } = await open('', { viewport });
      for (const plate of ['no-stop', 'limits', 'half-times']) {
        await openPlate(page, plate);
        const section = page.locator(`section#${plate}`);
        for (const part of [
          section.locator('svg').first(),
          section.getByRole('slider'),
          section.getByRole('list').last(),
        ]) {
          const box = (await part.boundingBox())!;
          expect(box.y + box.height, `${plate} at ${viewport.width} px`).toBeLessThanOrEqual(viewport.height);
        }
      }
    }
  });

  it('are taken along as a file with the caution on it', async () => {
    const { page } = await open('#limits');
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
    const { page } = await open('#gradient-factors');
    await map(page).waitFor();
    expect(await map(page).locator('[data-picture] svg path').count()).toBeGreaterThan(10);
    await page.locator('section#gradient-factors').getByText('Worked out: the map.').waitFor();
  });

  it('is stopped half-way, keeps the last, and is begun again to its end', async () => {
    const { page } = await visit();
    // However fast or slow the machine, no piece of work comes to its end while it is held.
    await page.addInitScript(() => {
      const on = Object.getOwnPropertyDescriptor(Worker.prototype, 'onmessage')!;
      Object.defineProperty(Worker.prototype, 'onmessage', {
        ...on,
        set(hear: (event: MessageEvent) => void) {
          on.set!.call(this, (event: MessageEvent<object>) => {
            if (!('held' in document.documentElement.dataset && 'result' in event.data)) hear(event);
          });
        },
      });
    });
    await arrive(page, '/curves/#gradient-factors');
    const section = page.locator('section#gradient-factors');
    await map(page).waitFor();
    const hold = (held: boolean) =>
      page.evaluate((is) => void document.documentElement.toggleAttribute('data-held', is), held);
    await hold(true);
    await section.getByRole('textbox', { name: 'Depth', exact: true }).fill('60 m');
    await section.getByRole('textbox', { name: 'Gas', exact: true }).fill('18/45');
    await section.getByText('every 1%').click();
    await section.getByText(/Working out the map: [1-9]/).waitFor();
    await section.getByRole('button', { name: 'Stop working out the map' }).click();
    await section.getByText('Stopped. The last one that was finished is shown').waitFor();
    expect(await sentence(page, 'Time to surface for each pair of gradient factors')).toContain('at 40 m on air');
    await hold(false);
    await section.getByText('every 5%').click();
    await section.getByText('Worked out: the map.').waitFor();
    expect(await sentence(page, 'Time to surface for each pair of gradient factors')).toContain('at 60 m on 18/45');
  });
});

describe('the screen of curves', () => {
  it('has no fault that axe can find in either theme, and fits a window 390 px wide, on two of its plates in turn', async () => {
    const { page } = await open();
    await page.getByText('Published tables beside').click();
    await page.getByRole('checkbox', { name: 'US Navy, Revision 7' }).check();
    for (const plate of drawn(PLATES, 2)) {
      await openPlate(page, plate);
      for (const table of await page.getByText(/^Table of /).all()) await table.click();
      expect(await faultsInEitherTheme(page), plate).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await sidewaysPx(page), plate).toBe(0);
      await page.setViewportSize({ width: 1440, height: 900 });
    }
  });

  it('draws its words large enough, apart from one another and whole, on a phone as on a desk', async () => {
    for (const viewport of [
      { width: 1440, height: 900 },
      { width: 390, height: 844 },
    ]) {
      const { page } = await open('', { viewport });
      for (const plate of PLATES) {
        await openPlate(page, plate);
        expect(await plateFaults(page), `${plate} at ${viewport.width} px`).toEqual([]);
      }
    }
  });

  it('prints the open plate with the caution and without controls or thumbnails', async () => {
    const { page } = await open('#how-sure');
    await bands(page).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('complementary', { name: 'Caution' }).isVisible()).toBe(true);
    expect(await page.getByRole('slider').first().isVisible()).toBe(false);
    expect(await page.getByRole('navigation', { name: 'Plates' }).isVisible()).toBe(false);
    expect(await bands(page).isVisible()).toBe(true);
  });

  it('prints one curve on a sheet of its own, with its table, cautions and watermark', async () => {
    const { page } = await open('#models');
    await page.getByRole('button', { name: 'Print “Ceilings over the same dive”' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('heading', { level: 1, name: 'Ceilings over the same dive' }).isVisible()).toBe(true);
    expect(await page.getByRole('table', { name: 'Ceilings over the same dive' }).last().isVisible()).toBe(true);
    expect(await page.locator('[data-watermark]').textContent()).toContain(cautions.watermark);
    expect(await page.getByRole('figure', { name: 'No-stop times by each model' }).isVisible()).toBe(false);
  });
});
