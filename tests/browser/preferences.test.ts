// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { arrive, browserVisits, settled } from './visit';

const visit = browserVisits();

const paper = (page: Page) => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
const light = 'rgb(250, 247, 239)';
const dark = 'rgb(19, 23, 28)';

describe('units and theme', () => {
  it(
    'hold across a reload, with no mismatch between the exported page and the live one',
    { tags: 'every-run' },
    async () => {
      const { page, complaints } = await visit();
      await page.goto('/');
      await page.getByRole('radio', { name: 'Imperial' }).check();
      await page.getByRole('radio', { name: 'Dark' }).check();
      expect(await paper(page)).toBe(dark);
      await page.reload();
      await settled(page);
      expect(await page.getByRole('radio', { name: 'Imperial' }).isChecked()).toBe(true);
      expect(await page.getByRole('radio', { name: 'Dark' }).isChecked()).toBe(true);
      expect(await paper(page)).toBe(dark);
      expect(complaints).toEqual([]);
    },
  );

  it('are on before the first paint, even where no other script runs', async () => {
    const { page } = await visit({ preferences: { theme: 'dark' } });
    await page.route('**/_next/**/*.js', (route) => route.abort());
    await page.goto('/');
    expect(await paper(page)).toBe(dark);
  });

  it('start light even on a machine set dark, and follow the machine when asked to', async () => {
    const { page } = await visit({ colorScheme: 'dark' });
    await page.goto('/');
    expect(await paper(page)).toBe(light);
    await page.getByRole('radio', { name: 'As this machine is set' }).check();
    expect(await paper(page)).toBe(dark);
    await page.emulateMedia({ colorScheme: 'light' });
    expect(await paper(page)).toBe(light);
  });

  it('work for the visit where storage is blocked', async () => {
    const { page, complaints } = await visit();
    await page.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('The operation is insecure.', 'SecurityError');
        },
      });
    });
    await arrive(page, '/');
    await page.getByRole('radio', { name: 'Dark' }).check();
    expect(await paper(page)).toBe(dark);
    expect(complaints).toEqual([]);
  });

  it('print on white paper whatever the theme', async () => {
    const { page } = await visit({ preferences: { theme: 'dark' } });
    await page.goto('/');
    await page.emulateMedia({ media: 'print' });
    expect(await paper(page)).toBe('rgb(255, 255, 255)');
  });
});
