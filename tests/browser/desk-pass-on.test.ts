// @module-tag in-turn
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { REEF, deskWithReef, linkTo, openDesk, openTools, restored, script } from './kept-desk';
import { accessibilityFaults, browserVisits } from './visit';

const visit = browserVisits();

describe('a link to a desk', () => {
  it('shows on a machine that has never been here exactly what was on the desk', { tags: 'every-run' }, async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await page.getByText('Choose pictures').click();
    await page.getByRole('checkbox', { name: 'The loading map' }).check();
    await page.getByRole('checkbox', { name: 'The chase' }).uncheck();
    await page.getByRole('button', { name: 'Cover Ceiling' }).click();
    await page.getByRole('slider', { name: 'Time cursor' }).fill('900');
    const link = await linkTo(page);

    const { page: elsewhere, complaints } = await visit();
    await elsewhere.goto(link);
    await elsewhere.getByText('Opened “A reef at eighteen metres” from the link.').waitFor();
    expect(await script(elsewhere).inputValue()).toBe(REEF);
    // A picture's code is fetched when it is first shown.
    await elsewhere.locator('[data-picture="loading"]').waitFor();
    expect(
      await elsewhere
        .locator('[data-picture]')
        .evaluateAll((plates) => plates.map((plate) => plate.getAttribute('data-picture'))),
    ).toEqual(['profile', 'loading']);
    expect(await elsewhere.getByRole('button', { name: 'Uncover Ceiling' }).isVisible()).toBe(true);
    expect(await elsewhere.getByText('Covered', { exact: true }).count()).toBe(1);
    expect(await elsewhere.getByRole('slider', { name: 'Time cursor' }).inputValue()).toBe('900');
    expect(await linkTo(elsewhere)).toBe(link);
    expect(complaints).toEqual([]);
  });

  it('keeps what was on the desk before, and is not opened over newer work by a reload', async () => {
    const { page } = await visit();
    await openDesk(page);
    const link = await linkTo(page);
    await script(page).fill(REEF);
    await page.evaluate((hash) => void (location.hash = hash), new URL(link).hash);
    await page.getByText('What was on your desk is among your saved dives.').waitFor();
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByRole('button', { name: 'Open A reef at eighteen metres (left on the desk)' }).click();
    expect(new URL(page.url()).hash).toBe('');
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(REEF);
  });

  it.each([
    [
      'was changed on the way',
      (fragment: string) => `${fragment.slice(0, 40)}x${fragment.slice(41)}`,
      /changed or cut on the way/,
    ],
    ['was cut', (fragment: string) => fragment.slice(0, 60), /changed or cut on the way|cut off/],
    [
      'is from a newer version',
      (fragment: string) => fragment.replace(/^1\./, '7.'),
      /version 7, and version 1 is read here/,
    ],
    ['is nothing of ours', () => 'lunch', /not a link to a dive/],
  ])('that %s is refused in plain words, and the usual desk is there', async (_how, spoil, told) => {
    const { page } = await visit();
    await deskWithReef(page);
    const fragment = new URL(await linkTo(page)).hash.slice(1);
    await page.goto('/');
    await page.goto(`${routes.desk.path}#${spoil(fragment)}`);
    const alert = page.getByRole('alert').filter({ hasText: told });
    await alert.waitFor();
    expect(await alert.textContent()).toContain('Your own desk is open meanwhile.');
    expect(await script(page).inputValue()).toBe(REEF);
    expect(new URL(page.url()).hash).toBe('');
  });

  it('comes with a code to photograph, what it leaves out and the caution', async () => {
    const { page } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Pass on' }).click();
    const dialog = page.getByRole('dialog', { name: 'Pass this desk on' });
    await dialog.getByRole('img', { name: 'QR code of the link' }).waitFor();
    expect(await dialog.getByText(/It leaves out your other saved dives/).isVisible()).toBe(true);
    expect(await dialog.getByText(cautions.general).first().isVisible()).toBe(true);
    expect(await accessibilityFaults(page)).toEqual([]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      dialog.getByRole('button', { name: 'Save the readings as CSV' }).click(),
    ]);
    const csv = await readFile(await download.path(), 'utf8');
    expect(csv.split('\n')[0]).toContain(cautions.general);
    expect(csv.split('\n').length).toBeGreaterThan(1000);
  });
});

describe('a picture as a file', () => {
  it('is an SVG that stands alone, with its title, its units and the caution', async () => {
    const { page } = await visit();
    await openDesk(page);
    await openTools(page, 'The dive');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save The dive as SVG' }).click(),
    ]);
    const svg = await readFile(await download.path(), 'utf8');
    const told = await page.evaluate((text) => {
      const read = new DOMParser().parseFromString(text, 'image/svg+xml');
      const words = Array.from(read.querySelectorAll('text'), (one) => one.textContent).join(' ');
      return {
        faults: read.querySelectorAll('parsererror').length,
        classes: read.querySelectorAll('[class]').length,
        words,
      };
    }, svg);
    expect(told.faults).toBe(0);
    expect(told.classes).toBe(0);
    expect(told.words).toContain('The dive');
    expect(told.words).toContain('Depths in metres');
    expect(told.words).toContain('never to dive on');
    expect(svg).not.toMatch(/var\(--|light-dark\(/);
    expect(svg).toContain('font/woff2;base64,');
  });

  it('is a PNG as the picture is seen, canvas and all, with words under it', async () => {
    const { page, complaints } = await visit();
    await openDesk(page);
    await page.getByText('Choose pictures').click();
    await page.getByRole('checkbox', { name: 'The loading map' }).check();
    await page.getByRole('slider', { name: 'Time cursor' }).fill('1200');
    await openTools(page, 'The loading map');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save The loading map as PNG' }).click(),
    ]);
    const png = (await readFile(await download.path())).toString('base64');
    const seen = await page.evaluate(async (data) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width, image.height];
      const context = canvas.getContext('2d', { willReadFrequently: true })!;
      context.drawImage(image, 0, 0);
      const inked = (fromY: number, toY: number) => {
        const { data: dots } = context.getImageData(0, Math.round(fromY), image.width, Math.round(toY - fromY));
        let dark = 0;
        for (let i = 0; i < dots.length; i += 4) if (dots[i]! + dots[i + 1]! + dots[i + 2]! < 380) dark += 1;
        return dark;
      };
      const { width, height } = image;
      return { width, height, foot: inked(height * 0.86, height), middle: inked(height * 0.3, height * 0.7) };
    }, png);
    expect(Math.max(seen.width, seen.height), 'along its longer side').toBe(2400);
    expect(Math.min(seen.width, seen.height)).toBeGreaterThan(500);
    expect(seen.foot, 'the caution is drawn').toBeGreaterThan(1000);
    expect(seen.middle, 'so is the canvas').toBeGreaterThan(10_000);
    expect(complaints).toEqual([]);
  });
});

describe('the printed sheet', () => {
  it('has the dive, its script, its readings and the caution on one page, with blanks for what is covered', async () => {
    const { page } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Cover Ceiling' }).click();
    await page.emulateMedia({ media: 'print' });
    const sheet = page.getByRole('article', { name: 'Printed sheet' });
    await sheet.waitFor();
    expect(await sheet.getByRole('columnheader', { name: 'Ceiling' }).isVisible()).toBe(true);
    expect(await sheet.getByRole('cell', { name: 'to fill in' }).count()).toBeGreaterThan(4);
    expect(await sheet.getByText('stay 17 min').isVisible()).toBe(true);
    expect(await page.getByRole('complementary', { name: 'Caution' }).isVisible()).toBe(true);
    expect(await page.getByRole('button').count(), 'nothing of the screen').toBe(0);
    const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  });
});
