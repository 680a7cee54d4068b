import { describe, expect, it } from 'vitest';
import { footRoutes, openRoutes, routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { accessibilityFaults, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

describe.each([routes.home, ...openRoutes, ...footRoutes].map(({ name, path }) => ({ name, path })))('$name, at $path', ({ path }) => {
  it('opens with one heading of the first rank, the caution, and nothing to complain of in the console', async () => {
    const { page, complaints } = await visit();
    await page.goto(path, { waitUntil: 'networkidle' });
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    expect(await page.getByRole('complementary', { name: 'Caution' }).textContent()).toBe(cautions.general);
    expect(complaints).toEqual([]);
  });

  it.each(['light', 'dark'])('has no fault that axe can find in the %s theme', async (theme) => {
    const { page } = await visit({ preferences: { theme } });
    await page.goto(path, { waitUntil: 'networkidle' });
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it.each([390, 1024])('fits a window %d px wide without scrolling sideways', async (width) => {
    const { page } = await visit({ viewport: { width, height: 844 } });
    await page.goto(path, { waitUntil: 'networkidle' });
    expect(await sidewaysPx(page)).toBe(0);
  });
});
