// @module-tag in-turn
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { openDesk, script } from './kept-desk';
import { plateFaults } from './plate-faults';
import { arrive, browserVisits, faultsInEitherTheme, hiddenFocus, settled, sidewaysPx } from './visit';

const visit = browserVisits();

/** No fault in either theme, and no scrolling sideways in a window a desktop has at 200%. */
async function holdsUp(page: Page, state: string): Promise<void> {
  expect.soft(await faultsInEitherTheme(page), state).toEqual([]);
  const size = page.viewportSize()!;
  await page.setViewportSize({ width: 720, height: 450 });
  expect.soft(await sidewaysPx(page), `${state} at 200%`).toBe(0);
  await page.setViewportSize(size);
}

/** Whether the menu of a picture leads to a table. */
async function hasTable(picture: Locator): Promise<boolean> {
  const tools = picture.getByRole('button', { name: /^Tools of/ });
  await tools.click();
  const found = (await picture.getByText(/^Table of /).count()) > 0;
  await tools.click();
  return found;
}

describe('the desk holds up', () => {
  it('with mistakes in its script, with every picture on it, and with each of its parts open', async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    await script(page).fill('descend to lunch\nstay\n');
    await page.getByText('The pictures show the last dive that made sense.').waitFor();
    await holdsUp(page, 'mistakes in the script');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Choose pictures').click();
    for (const box of await page.getByRole('list', { name: 'Pictures' }).getByRole('checkbox').all()) await box.check();
    await page.getByText('How to write a dive').click();
    await settled(page);
    for (const picture of await page.getByRole('figure').all()) {
      expect.soft(await picture.getAttribute('aria-label')).toBeTruthy();
      expect
        .soft(
          await picture.evaluate(
            (figure) =>
              document.getElementById(figure.getAttribute('aria-describedby') ?? '')?.textContent?.length ?? 0,
          ),
          `${await picture.getAttribute('aria-label')} says what it shows`,
        )
        .toBeGreaterThan(20);
      expect
        .soft(
          (await picture.getByRole('table').count()) > 0 || (await hasTable(picture)),
          `${await picture.getAttribute('aria-label')} has a table`,
        )
        .toBe(true);
    }
    for (const [width, height, colorScheme] of [
      [390, 844, 'dark'],
      [1440, 900, 'light'],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await settled(page);
      expect.soft(await plateFaults(page), `words of pictures at ${width} px`).toEqual([]);
    }
    // They lie over the pictures.
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByText('Nothing is saved yet.').waitFor();
    await holdsUp(page, 'every picture and panel');
    expect.soft(await hiddenFocus(page, 120), 'the focus is lost from sight').toEqual([]);
  }, 240_000);

  it('while it is steered, printed, and asked why', async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.getByRole('dialog', { name: 'Print this dive' }).waitFor();
    await holdsUp(page, 'the print dialog');
    await page.keyboard.press('Escape');
    expect.soft(await page.evaluate(() => document.activeElement?.textContent)).toBe('Print');
    await page.getByRole('button', { name: 'Why this ceiling?', exact: true }).click();
    await page.getByRole('heading', { name: /^Why\? Ceiling/ }).waitFor();
    await holdsUp(page, 'a working');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Steer by hand' }).click();
    await page.getByRole('slider', { name: /^Lever/ }).waitFor();
    await holdsUp(page, 'steering');
  }, 120_000);

  it('where a part of it cannot be fetched: it says so in its place, and tries again', async () => {
    const { page } = await visit({ serviceWorkers: 'block' });
    await openDesk(page);
    await settled(page);
    await page.route('**/_next/static/chunks/**', (route) => route.abort());
    await page.getByText('Choose pictures').click();
    await page.getByRole('checkbox', { name: 'Helium and nitrogen' }).check();
    await page.getByRole('alert').filter({ hasText: 'could not be fetched' }).waitFor();
    await holdsUp(page, 'a part that is missing');
    await page.unroute('**/_next/static/chunks/**');
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('figure', { name: 'Helium and nitrogen' }).waitFor();
  });
});

describe('other screens hold up', () => {
  it('with a file that is no dive, a run that is none, and a workshop with a lesson in it', async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await arrive(page, routes.bring.path);
    await page.getByLabel('Choose a UDDF or CSV file, or drop it here').setInputFiles({
      name: 'lunch.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]),
    });
    await page.getByRole('alert').first().waitFor();
    await holdsUp(page, 'a file that is no dive');
    await arrive(page, routes.bench.path);
    await page.getByLabel(/^The run as a script/).fill('descend to lunch');
    await page
      .getByText(/Line 1/)
      .first()
      .waitFor();
    await holdsUp(page, 'a run that is none');
    await arrive(page, workshopPath);
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page.getByRole('textbox', { name: 'Title' }).waitFor();
    await holdsUp(page, 'a lesson in the workshop');
  }, 120_000);
});
