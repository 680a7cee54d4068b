// @module-tag in-turn
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { readDiveFile } from '@/lib/files/read-dive-file';
import { plateFaults } from './plate-faults';
import { accessibilityFaults, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();
const folder = mkdtempSync(join(tmpdir(), 'bring-'));
const faulty = join(process.cwd(), 'content/records/two-dives-with-faults.csv');

/** A file of 200,000 samples, one a second, invented. */
function longFile(): string {
  const path = join(folder, 'long.csv');
  const rows = ['time_s,depth_m'];
  for (let t = 0; t < 200_000; t += 1) {
    const within = t % 5000;
    const depthM = Math.max(0, Math.min(within / 3, 24 - within / 400, (3000 - within) / 8));
    rows.push(`${t},${(depthM > 3 ? depthM + 0.5 * Math.sin(t / 45) : depthM).toFixed(1)}`);
  }
  writeFileSync(path, rows.join('\n'));
  return path;
}

const choose = (page: Page, path: string) =>
  page.getByLabel('Choose a UDDF or CSV file, or drop it here').setInputFiles(path);

async function mendAll(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'What is wrong with it' }).waitFor();
  const faults = page.getByRole('group', { name: /Mend what you agree to/ });
  for (const name of [/Leaps nobody/, /Cells that cannot/, /Repeated times/, /Negative depths/, /Time going backwards/])
    await faults.getByRole('checkbox', { name }).check();
}

async function textOf(download: Download): Promise<string> {
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  return readFileSync(path, 'utf8');
}

describe('bringing a recorded dive', () => {
  it('tells faults by row, mends by consent, and opens the dive on the desk', { tags: 'every-run' }, async () => {
    const { page, complaints } = await visit();
    await page.goto(routes.bring.path);
    await choose(page, faulty);
    await page.getByText('Row 253: the depth is negative (−0.2 m).').first().waitFor();
    expect(await page.getByRole('button', { name: 'Open on the desk' }).count()).toBe(0);
    await mendAll(page);
    const open = page.getByRole('button', { name: 'Open on the desk' });
    await open.waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    await open.click();
    await page.waitForURL(`**${routes.desk.path}`);
    await page.waitForFunction(() =>
      [...document.querySelectorAll('textarea')].some(({ value }) =>
        value.includes('two-dives-with-faults: a recorded dive'),
      ),
    );
    expect(complaints).toEqual([]);
  });

  it.each(['UDDF', 'CSV'])('exports %s that carries the caution and reads back the same', async (kind) => {
    const { page } = await visit();
    await page.goto(routes.bring.path);
    await choose(page, faulty);
    await mendAll(page);
    const button = page.getByRole('button', { name: `Export as ${kind}` });
    await button.waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
    const text = await textOf(download);
    expect(text).toContain(cautions.general);
    const bytes = new TextEncoder().encode(text);
    const read = await readDiveFile(bytes.subarray(0, 65_536), [bytes]);
    expect(read.ok && read.recordings.map(({ timeS, depthM }) => [timeS.length, Math.max(...depthM)])).toEqual([
      [248, 33.4],
      [193, 21.4],
    ]);
  });

  it('reads 200,000 samples while the page still answers', async () => {
    const { page } = await visit({ everyFrame: true });
    await page.goto(routes.bring.path);
    await choose(page, longFile());
    // A page that is held up cannot draw frames meanwhile.
    const slowestMs = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          let last = performance.now();
          let slowest = 0;
          const until = last + 1500;
          const frame = (now: number) => {
            slowest = Math.max(slowest, now - last);
            last = now;
            if (now > until) resolve(slowest);
            else requestAnimationFrame(frame);
          };
          requestAnimationFrame(frame);
        }),
    );
    expect(slowestMs).toBeLessThan(1000);
    await page.getByText(/200,000 samples are brought as/).waitFor();
  });

  it.each([320, 1024])('fits a window %d px wide with a record in it', async (width) => {
    const { page } = await visit({ viewport: { width, height: 844 } });
    await page.goto(routes.bring.path);
    await choose(page, faulty);
    await mendAll(page);
    await page.getByRole('button', { name: 'Open on the desk' }).waitFor();
    expect(await sidewaysPx(page)).toBe(0);
    await expect.poll(() => plateFaults(page)).toEqual([]);
  });
});
