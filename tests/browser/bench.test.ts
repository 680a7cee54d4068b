// @module-tag in-turn
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { faultsInEitherTheme, arrive, browserVisits, settled, sidewaysPx } from './visit';

const visit = browserVisits();
const SHORT =
  'descend to 10 m at 10 m/min\nstay 1 min # check: ten\ndescend to 16 m at 10 m/min\nstay 1 min # check: sixteen\nascend to surface at 10 m/min\n';

async function openShort(page: Page): Promise<void> {
  await arrive(page, routes.bench.path);
  await page.getByLabel(/^The run as a script/).fill(SHORT);
  await page.getByRole('group', { name: 'Unit 1 at ten' }).waitFor();
}

async function read(page: Page, group: string, depth: string): Promise<void> {
  const box = page.getByRole('group', { name: group }).getByLabel('Depth shown, m');
  await box.fill(depth);
  await box.press('Enter');
}

describe('a bench sheet', () => {
  it(
    'is filled in, judged by what its user states, kept over a reload and exported with the cautions',
    { tags: 'every-run' },
    async () => {
      const { page, complaints } = await visit();
      await openShort(page);
      const tolerance = page.getByLabel('Depth may be off by, m');
      await tolerance.fill('0.5');
      await tolerance.press('Enter');
      await read(page, 'Unit 1 at ten', '9.8');
      await page
        .getByRole('group', { name: 'Unit 1 at sixteen' })
        .getByRole('checkbox', { name: 'shows no depth' })
        .check();
      const verdict = page.getByRole('article', { name: 'Unit 1' });
      await verdict.getByText('Stop the run. Do not return this unit to service.').waitFor();
      await verdict.getByText('No depth reading at 16 m.').waitFor();

      await page.reload();
      await settled(page);
      await verdict.getByText('No depth reading at 16 m.').waitFor();

      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Export as CSV' }).click(),
      ]);
      const text = readFileSync(await download.path(), 'utf8');
      for (const words of [cautions.general, cautions.chamber, 'No depth reading at 16 m.', 'EN 13319'])
        expect(text).toContain(words);
      expect(complaints.filter((text) => !text.includes('preloaded using link preload'))).toEqual([]);
    },
  );

  it('prints with both cautions, the checkpoints and the verdict, and without its forms', async () => {
    const { page } = await visit();
    await openShort(page);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText(cautions.chamber).isVisible()).toBe(true);
    expect(await page.getByRole('complementary', { name: 'Caution' }).isVisible()).toBe(true);
    const sheet = page.getByRole('table', { name: 'Sheet to write on' });
    expect(await sheet.getByRole('columnheader', { name: /^Unit 1/ }).isVisible()).toBe(true);
    expect(await sheet.getByRole('rowheader', { name: /^sixteen/ }).isVisible()).toBe(true);
    expect(await page.getByRole('group', { name: 'Unit 1 at sixteen' }).isVisible()).toBe(false);
    expect(await page.getByLabel(/^The run as a script/).isVisible()).toBe(false);
  });

  it('runs against the clock and hands the run to the desk', async () => {
    const { page } = await visit();
    await openShort(page);
    const live = page.getByRole('region', { name: 'Run it against the clock' });
    await live.getByRole('button', { name: 'Start the clock' }).click();
    await live.getByRole('button', { name: 'The gauge is at 10 m' }).click();
    await live.getByText('Hold 10 m on the gauge for 1:00. Then read the units: ten.').waitFor();
    await page.getByRole('button', { name: 'Watch this run on the desk' }).click();
    await page.waitForURL(`**${routes.desk.path}`);
    await page.waitForFunction(() =>
      [...document.querySelectorAll('textarea')].some(({ value }) =>
        value.includes('what the units in the pot go through'),
      ),
    );
  });

  it('has no fault that axe can find in either theme, with two units out of tolerance', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 } });
    await openShort(page);
    await page.getByRole('button', { name: 'Add a unit' }).click();
    const tolerance = page.getByLabel('Depth may be off by, m');
    await tolerance.fill('0.5');
    await tolerance.press('Enter');
    await read(page, 'Unit 1 at ten', '12');
    await read(page, 'Unit 2 at ten', '12');
    expect(await faultsInEitherTheme(page)).toEqual([]);
    expect(await sidewaysPx(page)).toBe(0);
  });
});
