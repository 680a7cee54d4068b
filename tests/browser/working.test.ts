// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { faultsInEitherTheme, arrive, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

async function askNoStop(options: Parameters<typeof visit>[0] = {}) {
  const { page, complaints } = await visit(options);
  await arrive(page, '/desk/');
  await page.getByRole('slider', { name: 'Time cursor' }).fill('300');
  await page.getByRole('button', { name: 'Why this no-stop time?' }).click();
  const sheet = page.getByRole('dialog', { name: 'Why? No-stop time' });
  await sheet.locator('math').first().waitFor();
  return { page, sheet, complaints };
}

describe('the working behind a reading of the desk', () => {
  it(
    'sets its formulas as mathematics that can be seen, with nothing to complain of',
    { tags: 'every-run' },
    async () => {
      const { sheet, complaints } = await askNoStop();
      // What stands to the right of the first equals sign: a fraction, ln 2 over a half-time.
      const box = await sheet.locator('math').nth(1).boundingBox();
      expect(box!.width).toBeGreaterThan(40);
      expect(box!.height).toBeGreaterThan(10);
      expect(complaints).toEqual([]);
    },
  );

  it('carries a changed half-time through to another answer and leaves the reading as it is', async () => {
    const { page, sheet } = await askNoStop();
    const reading = page.getByRole('group', { name: 'No-stop time', exact: true });
    const before = await reading.textContent();
    await sheet
      .getByRole('combobox', { name: 'The number to change' })
      .selectOption({ label: 'half-time of this compartment for nitrogen' });
    await sheet.getByRole('textbox', { name: 'were' }).fill('8');
    const told = await sheet.getByRole('status').last().textContent();
    const [, would, so] = /It would be ([\d.]+) min(?: \(compartment \d+\))? instead of ([\d.]+) min/.exec(told!)!;
    expect(Number(would)).not.toBeCloseTo(Number(so), 1);
    expect(await reading.textContent()).toBe(before);
    await sheet.getByRole('button', { name: 'Reset' }).click();
    expect(await sheet.getByRole('status').last().textContent()).toContain('The dive stays as it is');
  });

  it('is asked of a compartment by a click on its mark', async () => {
    const { page } = await visit();
    await arrive(page, '/desk/');
    await page.locator('[data-picture="chase"] svg').click({ position: { x: 300, y: 200 } });
    await page
      .getByRole('dialog', { name: /Why\? Tension in compartment/ })
      .locator('math')
      .first()
      .waitFor();
  });

  it('closes on Escape with the focus back on its button', async () => {
    const { page, sheet } = await askNoStop();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'Why this no-stop time?',
    );
  });

  it('has no fault that axe can find while open, in either theme, and leaves the page fitting every window', async () => {
    const { page } = await askNoStop();
    expect(await faultsInEitherTheme(page)).toEqual([]);
    for (const width of [1440, 1024, 390]) {
      await page.setViewportSize({ width, height: 844 });
      expect.soft(await sidewaysPx(page), `${width} px`).toBe(0);
    }
  });

  it('loads none of its mathematics before it is asked for', async () => {
    const { page } = await visit();
    const scripts: string[] = [];
    page.on('response', async (response) => {
      if (response.url().endsWith('.js')) scripts.push(await response.text().catch(() => ''));
    });
    await arrive(page, '/desk/');
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.some((text) => text.includes('ConditionalNode') || text.includes('temml'))).toBe(false);
  });
});
