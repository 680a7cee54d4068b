// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { openDesk, script } from './kept-desk';
import { faultsInEitherTheme, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

const OVER = `# Too long at thirty metres
gas: air
gradient factors: 85/85
descend to 30 m at 18 m/min
stay 20 min
ascend to surface at 9 m/min
`;

/** Asks by way of the reading, its "why?" and what stands at the end of that. */
async function asked(options: Parameters<typeof visit>[0] = {}) {
  const { page, complaints } = await visit(options);
  await openDesk(page);
  await script(page).fill(OVER);
  await page.getByRole('slider', { name: 'Time cursor' }).fill('1290');
  await page.getByRole('button', { name: /^Why this required stop/ }).click();
  await page.getByRole('dialog', { name: /^Why\? Required stop/ }).waitFor();
  await page.getByRole('button', { name: 'What would have avoided it?' }).click();
  const sheet = page.getByRole('dialog', { name: 'What would have avoided it?' });
  await sheet.getByRole('heading', { name: 'Leave the bottom earlier' }).waitFor();
  return { page, sheet, complaints };
}

const way = (sheet: Awaited<ReturnType<typeof asked>>['sheet'], title: string) =>
  sheet.getByRole('listitem').filter({ has: sheet.page().getByRole('heading', { name: title, exact: true }) });

describe('what would have avoided a stop', () => {
  it(
    'is told under the caution, drawn beside the dive two at a time, and written into the script as one change',
    { tags: 'every-run' },
    async () => {
      const { page, sheet, complaints } = await asked({ viewport: { width: 1440, height: 900 } });
      expect(await sheet.textContent()).toContain(cautions.general);
      const dashed = page.locator('[data-picture="profile"] [class*="overlay"]');
      expect(await dashed.count()).toBe(0);
      await way(sheet, 'Leave the bottom earlier').getByRole('button', { name: 'Show it' }).click();
      await way(sheet, 'Breathe a richer gas').getByRole('button', { name: 'Show it' }).click();
      await expect.poll(() => dashed.count()).toBe(2);
      expect(await sheet.getByRole('columnheader').allTextContents()).toEqual([
        'Reading',
        'As dived',
        'Leave the bottom earlier',
        'Breathe a richer gas',
      ]);
      await way(sheet, 'Leave the bottom earlier').getByRole('button', { name: 'Use it' }).click();
      await sheet.waitFor({ state: 'detached' });
      await expect.poll(() => script(page).inputValue()).toBe(OVER.replace('20 min', '14 min'));
      expect(await dashed.count()).toBe(0);
      await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
      await expect.poll(() => script(page).inputValue()).toBe(OVER);
      expect(complaints).toEqual([]);
    },
  );

  it('speaks feet where feet are chosen', async () => {
    const { sheet } = await asked({ preferences: { units: 'imperial' } });
    expect(await sheet.textContent()).not.toMatch(/\d m\b|\d m\/min/);
  });

  it('has no fault that axe can find while open, in either theme, and leaves the page fitting a window of a phone', async () => {
    const { page } = await asked();
    expect(await faultsInEitherTheme(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await sidewaysPx(page)).toBe(0);
  });
});
