// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesk, restored, script } from './kept-desk';
import { plateFaults } from './plate-faults';
import { accessibilityFaults, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

describe('the presenter’s view', () => {
  const clock = (page: Page) => page.locator('[data-part="moment"]');

  it('goes by a clicker from point to point, plays, covers, reveals and leaves', { tags: 'every-run' }, async () => {
    const { page, complaints } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Present' }).click();
    await clock(page).waitFor();
    expect(await page.getByRole('textbox', { name: 'Dive script' }).count()).toBe(0);
    expect(await page.getByRole('complementary', { name: 'Caution' }).first().isVisible()).toBe(true);
    expect(await clock(page).textContent()).toMatch(/^0:00 1 of/);
    const times = new Set<string>();
    for (let press = 0; press < 3; press += 1) {
      await page.keyboard.press(press === 1 ? 'ArrowRight' : 'PageDown');
      times.add((await clock(page).textContent()) ?? '');
    }
    expect(times.size).toBe(3);
    await page.keyboard.press('PageUp');
    expect(times.has((await clock(page).textContent()) ?? '')).toBe(true);
    await page.keyboard.press('b');
    expect(await page.getByRole('button', { name: 'Uncover Depth' }).isVisible()).toBe(true);
    await page.keyboard.press('r');
    expect(await page.getByRole('button', { name: 'Uncover Depth' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Uncover Time', exact: true }).isVisible()).toBe(true);
    await page.keyboard.press('b');
    await page.keyboard.press(' ');
    await page.getByRole('button', { name: 'Pause' }).waitFor();
    await page.keyboard.press(' ');
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys for presenting' }).waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.keyboard.press('Escape');
    await script(page).waitFor();
    expect(await page.evaluate(() => document.documentElement.style.fontSize)).toBe('');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Present');
    expect(complaints).toEqual([]);
  });

  it('shows only the panels chosen, remembers them, and has larger type on a larger screen', async () => {
    const { page } = await visit({ viewport: { width: 1920, height: 1080 } });
    await openDesk(page);
    const usual = await page.evaluate(() => parseFloat(getComputedStyle(document.documentElement).fontSize));
    await page.getByRole('button', { name: 'Present' }).click();
    await page.getByRole('button', { name: 'Panels' }).click();
    await page.getByRole('checkbox', { name: 'Readings' }).uncheck();
    await page.getByRole('checkbox', { name: 'The dive', exact: true }).uncheck();
    expect(
      await page
        .locator('[data-picture]')
        .evaluateAll((plates) => plates.map((plate) => plate.getAttribute('data-picture'))),
    ).toEqual(['chase']);
    expect(await page.getByRole('region', { name: 'Readings' }).count()).toBe(0);
    expect(await page.evaluate(() => parseFloat(getComputedStyle(document.documentElement).fontSize))).toBeGreaterThan(
      usual * 1.5,
    );
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await plateFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.reload();
    await restored(page);
    await page.getByRole('button', { name: 'Present' }).click();
    await clock(page).waitFor();
    await expect.poll(() => page.locator('[data-picture]').count()).toBe(1);
  });

  it('puts a ring around the pointer while it is asked for or a button is held', async () => {
    const { page } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Present' }).click();
    await clock(page).waitFor();
    const ring = page.locator('[data-always]');
    const seen = () =>
      ring.evaluate((element) => ({
        opacity: getComputedStyle(element).opacity,
        place: element.getBoundingClientRect().x + element.getBoundingClientRect().width / 2,
      }));
    await page.mouse.move(400, 300);
    expect((await seen()).opacity).toBe('0');
    await page.mouse.down();
    expect(Number((await seen()).opacity)).toBeGreaterThan(0.5);
    await page.mouse.up();
    expect((await seen()).opacity).toBe('0');
    await page.keyboard.press('h');
    await page.mouse.move(500, 320);
    const { opacity, place } = await seen();
    expect(Number(opacity)).toBeGreaterThan(0.5);
    expect(place).toBeCloseTo(500, 0);
  });

  it('answers why beside the panels', async () => {
    const { page } = await visit({ viewport: { width: 1600, height: 900 } });
    await openDesk(page);
    await page.getByRole('button', { name: 'Present' }).click();
    await clock(page).waitFor();
    await page.getByRole('button', { name: 'Why this no-stop time?', exact: true }).click();
    const sheet = await page.locator('dialog[open]').boundingBox();
    const hand = await page.getByRole('group', { name: 'Presenting' }).boundingBox();
    expect(hand!.y).toBeGreaterThanOrEqual(sheet!.y + sheet!.height - 1);
    for (const part of await page.locator('[data-picture], [data-reading]').all())
      expect((await part.boundingBox())!.x).toBeGreaterThanOrEqual(sheet!.x + sheet!.width - 1);
    await page.keyboard.press('Escape');
    expect(await page.locator('dialog[open]').count()).toBe(0);
    expect(await clock(page).isVisible(), 'Escape closed the answer, not the view').toBe(true);
  });

  it.each([390, 1280])('fits a window %d px wide', async (width) => {
    const { page } = await visit({ viewport: { width, height: 760 } });
    await openDesk(page);
    await page.getByRole('button', { name: 'Present' }).click();
    await clock(page).waitFor();
    expect(await sidewaysPx(page)).toBe(0);
  });
});

describe('undo by keys', () => {
  it('takes back and does again what was done outside a box', async () => {
    const { page } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Cover Depth' }).click();
    await page.keyboard.press('Control+z');
    expect(await page.getByRole('button', { name: 'Cover Depth' }).isVisible()).toBe(true);
    await page.keyboard.press('Control+Shift+z');
    expect(await page.getByRole('button', { name: 'Uncover Depth' }).isVisible()).toBe(true);
  });
});
