// @module-tag in-turn
import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { isSiteStale } from '@/app/commands/site/build-site';
import { lessonSlugs } from '@/app/lessons/load-lessons';
import { lessonPath, workshopPath, yamlPath } from '@/app/parts/lesson-paths';
import { embedPath, routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { LESSON, tablePath } from './every-page';
import { openDesk, openTools, restored } from './kept-desk';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

/** Every word of it, wherever lines are broken. */
const plain = (text: string) => text.replace(/\s+/g, ' ');

async function saved(page: Page, button: string | RegExp): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return plain(await readFile(await download.path(), 'utf8'));
}

/** The words drawn in a picture, and those said of it. */
const drawn = (svg: string) =>
  plain([...svg.matchAll(/<(?:text|tspan)\b[^>]*>([^<]*)</g)].map(([, words]) => words).join(' '));

/** How many dots of a picture's foot are dark, where its words are. */
async function inkAtFoot(page: Page, button: string): Promise<number> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  const png = (await readFile(await download.path())).toString('base64');
  return page.evaluate(async (data) => {
    const bitmap = await createImageBitmap(
      new Blob([Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0))], { type: 'image/png' }),
    );
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
    const context = canvas.getContext('2d')!;
    context.drawImage(bitmap, 0, 0);
    const from = Math.round(bitmap.height * 0.9);
    const { data: dots } = context.getImageData(0, from, bitmap.width, bitmap.height - from);
    let dark = 0;
    for (let i = 0; i < dots.length; i += 4) if (dots[i]! + dots[i + 1]! + dots[i + 2]! < 380) dark += 1;
    return dark;
  }, png);
}

/** What goes to paper when a print button is pressed: the words that are shown there. */
async function printed(page: Page, button: string | RegExp): Promise<string> {
  await page.evaluate(() => void (window.print = () => void document.documentElement.setAttribute('data-printed', '')));
  await page.getByRole('button', { name: button }).first().click();
  await page.waitForFunction(() => document.documentElement.hasAttribute('data-printed'));
  await page.emulateMedia({ media: 'print' });
  const words = await page.evaluate(() => document.body.innerText);
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => {
    document.documentElement.removeAttribute('data-printed');
    window.dispatchEvent(new Event('afterprint'));
  });
  return plain(words);
}

describe('the caution goes along with', () => {
  it('all that leaves the desk: files, pictures, codes, links and paper', { tags: 'every-run' }, async () => {
    const { page } = await visit();
    await openDesk(page);
    await openTools(page, 'The dive');
    expect.soft(drawn(await saved(page, 'Save The dive as SVG'))).toContain(cautions.general);
    expect.soft(await inkAtFoot(page, 'Save The dive as PNG')).toBeGreaterThan(1000);
    await page.getByRole('button', { name: 'Pass on' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('img', { name: 'QR code of the link' }).waitFor();
    expect.soft(plain((await dialog.textContent()) ?? '')).toContain(cautions.general);
    expect.soft(drawn(await saved(page, 'Save the code as SVG'))).toContain(cautions.general);
    expect.soft(await saved(page, 'Save the readings as CSV')).toContain(cautions.general);
    expect.soft(await saved(page, 'Save the dive as a page of its own')).toContain(cautions.general);
    const link = await page.getByRole('textbox', { name: 'Link' }).inputValue();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect.soft(await saved(page, 'Export all as one file')).toContain(cautions.general);
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    expect.soft(await printed(page, 'Print the sheet')).toContain(cautions.general);
    await page.getByRole('button', { name: 'Why this ceiling?', exact: true }).click();
    expect.soft(await printed(page, 'Print this working')).toContain(cautions.general);
    // Whoever is sent the link meets it before the dive.
    await page.goto(link);
    await restored(page);
    expect.soft(await page.getByRole('complementary', { name: 'Caution' }).textContent()).toBe(cautions.general);
    // In a course page, on the screen and on paper.
    await page.goto(embedPath + new URL(link).hash);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const words = () => page.evaluate(() => document.body.innerText);
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media });
      expect.soft(plain(await words()), media).toContain(cautions.general);
      expect.soft(plain(await words()), media).toContain(cautions.unknown);
    }
  });

  it('curves and staged stops, as pictures and on paper', async () => {
    const { page } = await visit();
    await arrive(page, `${routes.curves.path}#limits`);
    expect.soft(drawn(await saved(page, 'Save What each compartment tolerates as SVG'))).toContain(cautions.general);
    expect.soft(await inkAtFoot(page, 'Save What each compartment tolerates as PNG')).toBeGreaterThan(1000);
    expect.soft(await printed(page, 'Print “What each compartment tolerates”')).toContain(cautions.general);
    await arrive(page, tablePath);
    expect.soft(await printed(page, /^Print/)).toContain(cautions.general);
    await page.goto(`${routes.desk.path}#play=staged`);
    await page.getByText('Opened “Staged stops on three gases” to play.').waitFor();
    await page.getByRole('button', { name: 'Pause' }).click();
    await page.getByText('Choose pictures').click();
    await page.getByRole('checkbox', { name: 'Staged stops' }).check();
    const words = await printed(page, 'Print the run-time table');
    expect.soft(words).toContain(cautions.general);
    expect.soft(words).toContain(cautions.deepCourse);
  });

  it('a recorded dive taken away, and a bench sheet', async () => {
    const { page } = await visit();
    await arrive(page, routes.bring.path);
    await page.getByLabel('Choose a UDDF or CSV file, or drop it here').setInputFiles({
      name: 'dive.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('time (s),depth (m)\n0,0\n60,9\n120,18\n600,18\n700,9\n800,0\n'),
    });
    await page.getByRole('button', { name: 'Open on the desk' }).waitFor();
    expect.soft(await saved(page, 'Export as UDDF')).toContain(cautions.general);
    expect.soft(await saved(page, 'Export as CSV')).toContain(cautions.general);
    await arrive(page, routes.bench.path);
    const sheet = await saved(page, 'Export as CSV');
    const paper = await printed(page, /^Print/);
    for (const caution of [cautions.general, cautions.chamber]) {
      expect.soft(sheet).toContain(caution);
      expect.soft(paper).toContain(caution);
    }
  });

  it('every lesson as a file, its results, and what is made in the workshop', async () => {
    const { page } = await visit();
    for (const slug of lessonSlugs())
      expect.soft(await (await page.request.get(yamlPath(slug))).text(), slug).toContain(cautions.general);
    await arrive(page, lessonPath(LESSON, 'results'));
    await page.getByRole('button', { name: 'Your results' }).first().click();
    expect.soft(await saved(page, 'Save as text')).toContain(cautions.general);
    expect.soft(await printed(page, /^Print$/)).toContain(cautions.general);
    // A question as a page of its own, where it is made, as a file, in a course page, and on paper.
    await arrive(page, lessonPath(LESSON, 'on-arrival'));
    await page.getByRole('button', { name: 'Tools of this lesson' }).click();
    await page.getByRole('button', { name: 'This question as a page of its own' }).click();
    expect.soft(await saved(page, 'Save the question as a page of its own')).toContain(cautions.general);
    const dialog = page.getByRole('dialog', { name: 'This question as a page of its own' });
    expect.soft(plain((await dialog.textContent()) ?? '')).toContain(cautions.general);
    // Said where it is seen: the dialog holds the page.
    await dialog
      .getByRole('status')
      .getByText(/^Saved halftime-.*, with the caution on it\./)
      .waitFor();
    const line = await dialog.getByRole('textbox', { name: 'Line for a frame' }).inputValue();
    await page.goto(/src="([^"]*)"/.exec(line)![1]!);
    await page.getByRole('heading', { level: 1 }).waitFor();
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media });
      const words = plain(await page.evaluate(() => document.body.innerText));
      for (const caution of [cautions.general, cautions.unknown]) expect.soft(words, media).toContain(caution);
    }
    await page.emulateMedia({ media: 'screen' });
    await arrive(page, workshopPath);
    await page.getByRole('button', { name: 'New lesson' }).click();
    expect.soft(await saved(page, 'Export')).toContain(cautions.general);
    await page.getByRole('button', { name: 'Pass on' }).click();
    expect.soft(plain((await page.getByRole('dialog').textContent()) ?? '')).toContain(cautions.general);
  });

  // A site that is older than its sources would first be built anew.
  it.skipIf(isSiteStale())('the address that the start command tells', async () => {
    const server = spawn(process.execPath, ['--import', 'tsx', 'app/commands/start.ts'], {
      env: { ...process.env, PORT: '0' },
    });
    try {
      let told = '';
      for await (const part of server.stdout) {
        told += String(part);
        if (told.includes('Ctrl+C')) break;
      }
      expect(told).toContain(cautions.general);
    } finally {
      server.kill();
    }
  });
});
