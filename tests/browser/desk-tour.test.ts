// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesk, openTools, restored } from './kept-desk';
import { accessibilityFaults, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

const offer = (page: Page) => page.getByRole('group', { name: 'A tour of the desk' });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent);
const boxOf = async (page: Page, selector: string) => (await page.locator(selector).boundingBox())!;
const shared = (one: { x: number; y: number; width: number; height: number }, other: typeof one) =>
  Math.max(0, Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x)) *
  Math.max(0, Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y));

describe('the tour of the desk', () => {
  it('is taken by keys, points at each part without covering it or the dive, and gives the focus back', async () => {
    const { page, complaints } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    const chart = await boxOf(page, '[data-picture="profile"]');
    await offer(page).getByRole('button', { name: 'Show me the desk' }).press('Enter');
    for (const [stop, title] of [
      'A dive is a few lines of text',
      'The dive, drawn',
      'What it comes to, at one moment',
      'Why that number?',
      'Let time run',
    ].entries()) {
      const card = page.getByRole('dialog', { name: title });
      await card.waitFor();
      await page.getByText(`Stop ${stop + 1} of 5`).waitFor();
      expect(await focused(page)).toBe(title);
      const box = (await card.boundingBox())!;
      expect(shared(box, await boxOf(page, '[data-ring]')), `the card covers what it points at in “${title}”`).toBe(0);
      expect(shared(box, await boxOf(page, '[data-picture="profile"]')), `the card covers the dive in “${title}”`).toBe(
        0,
      );
      if (stop === 1) expect(await accessibilityFaults(page)).toEqual([]);
      await page.keyboard.press('ArrowRight');
    }
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('dialog', { name: 'Why that number?' }).waitFor();
    await page.keyboard.press('Escape');
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await focused(page)).toBe('Tour');
    expect(await boxOf(page, '[data-picture="profile"]'), 'nothing has moved').toEqual(chart);
    await page.reload();
    await restored(page);
    expect(await offer(page).isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Tour', exact: true }).click();
    await page.getByRole('dialog', { name: 'A dive is a few lines of text' }).waitFor();
    expect(complaints).toEqual([]);
  });

  it('can be refused for ever, or for now', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 } });
    await openDesk(page);
    expect(await sidewaysPx(page)).toBe(0);
    await offer(page).getByRole('button', { name: 'Not now: no tour' }).click();
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Tools of the desk');
    await page.reload();
    await restored(page);
    expect(await offer(page).isVisible(), 'not again in this window').toBe(false);
    const later = await page.context().newPage();
    await openDesk(later);
    await offer(later).getByRole('button', { name: 'Never offer a tour' }).click();
    await later.getByText('The tour stays here, under “Tour”.').waitFor();
    const evenLater = await page.context().newPage();
    await openDesk(evenLater);
    expect(await offer(evenLater).isVisible()).toBe(false);
  });

  it('says where a part is that is not on the desk, and fits a phone', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 }, preferences: { theme: 'dark' } });
    await openDesk(page);
    await openTools(page, 'The dive');
    await page.getByText('Choose pictures').locator('visible=true').click();
    // The menu goes with its picture.
    await page.getByRole('checkbox', { name: 'The dive', exact: true }).click();
    await page.getByRole('button', { name: 'Tools of the desk' }).click();
    await page.getByRole('button', { name: 'Tour', exact: true }).click();
    await page.getByRole('button', { name: 'Next', exact: true }).click();
    await page.getByText('Tick “The dive” under “Choose pictures” to see it.').waitFor();
    expect(await page.locator('[data-ring]').count()).toBe(0);
    expect(await sidewaysPx(page)).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
  });
});
