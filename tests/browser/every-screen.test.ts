// @module-tag in-turn
import { readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { everyPage } from './every-page';
import { plateFaults } from './plate-faults';
import { arrive, browserVisits, faultsInEitherTheme, hiddenFocus, overlaidControls, sidewaysPx } from './visit';

const visit = browserVisits();

const DESKTOP = { width: 1440, height: 900 };

/** How far the page scrolls sideways in each kind of window it has to fit. */
async function sidewaysIn(page: Page): Promise<Record<string, number>> {
  const found: Record<string, number> = {};
  for (const [how, width, height] of [
    ['a phone', 390, 844],
    ['a tablet', 1024, 768],
    ['a desktop at 200%', 720, 450],
  ] as const) {
    await page.setViewportSize({ width, height });
    found[how] = await sidewaysPx(page);
    // A picture is measured and drawn anew after its window has another size.
    await expect.poll(() => plateFaults(page), { message: `words of pictures on ${how}`, timeout: 5000 }).toEqual([]);
  }
  await page.setViewportSize(DESKTOP);
  await page.evaluate(() => void (document.documentElement.style.fontSize = '200%'));
  found['letters at 200%'] = await sidewaysPx(page);
  expect.soft(await overlaidControls(page), 'controls lie over one another with letters at 200%').toEqual([]);
  await page.evaluate(() => void (document.documentElement.style.fontSize = ''));
  return found;
}

it('the list of pages has every page of the app', { tags: 'every-run' }, () => {
  const made = readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((file) =>
    /(^|[/\\])page\.tsx$/.test(file),
  );
  // One more is the page for an address that leads nowhere.
  expect(everyPage).toHaveLength(made.length + 1);
});

describe.each(everyPage)('$name, at $path', ({ path }) => {
  it('has one heading of the first rank, no fault axe can find in either theme, fits every window, shows where the focus is and says the caution', async () => {
    const { page, complaints } = await visit({ viewport: DESKTOP, reducedMotion: 'reduce' });
    await arrive(page, path);
    expect.soft(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    expect.soft(await faultsInEitherTheme(page)).toEqual([]);
    expect.soft(await plateFaults(page), 'words of pictures').toEqual([]);
    const imperial = page.getByRole('radio', { name: 'Imperial' });
    if (await imperial.isVisible()) {
      await imperial.check({ force: true });
      expect.soft(await plateFaults(page), 'words of pictures in feet').toEqual([]);
      await page.getByRole('radio', { name: 'Metric' }).check({ force: true });
    }
    expect
      .soft(await sidewaysIn(page))
      .toEqual({ 'a phone': 0, 'a tablet': 0, 'a desktop at 200%': 0, 'letters at 200%': 0 });
    expect.soft(await hiddenFocus(page, 40), 'the focus is lost from sight').toEqual([]);
    expect
      .soft(
        await page.evaluate(
          () =>
            document.getAnimations().filter((one) => Number(one.effect?.getComputedTiming().duration ?? 0) > 1).length,
        ),
        'something moves that was asked not to',
      )
      .toBe(0);
    // The page for an address that leads nowhere is itself told of in the console.
    expect.soft(complaints.filter((one) => !/status of 404/.test(one))).toEqual([]);

    // The caution, on screen, in colours forced by the machine, and on paper.
    await page.evaluate(() => window.scrollTo(0, 0));
    const strip = page.getByRole('complementary', { name: 'Caution' }).first();
    expect(await strip.textContent()).toBe(cautions.general);
    expect(await strip.isVisible()).toBe(true);
    await page.emulateMedia({ forcedColors: 'active' });
    expect(await strip.isVisible()).toBe(true);
    await page.emulateMedia({ forcedColors: 'none', media: 'print' });
    const printed = await page.evaluate(() => document.body.innerText);
    expect(printed).toContain(cautions.general);
    expect(printed).toContain(cautions.unknown);
  }, 120_000);
});
