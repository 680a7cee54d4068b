// @module-tag in-turn
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { seeded } from '@/lib/quantity/seeded';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

const SEED = Number(process.env['SEED']);
/** How long is poked: a little in each run, from another seed, and thoroughly where there is time. */
const LONG = process.env['LONG'] !== undefined;
const DESK_MS = LONG ? 180_000 : 8_000;
const SCREEN_MS = LONG ? 60_000 : 3_000;
const KEYS = [
  'Tab',
  'Enter',
  'Escape',
  'Space',
  'ArrowUp',
  'ArrowDown',
  'ArrowLeft',
  'ArrowRight',
  'Delete',
  'Insert',
  'Control+z',
  'Control+y',
];
const TYPED = [
  '30 m',
  '100 ft',
  '-1',
  'x',
  '99999',
  '2:50',
  'descend to 12 m at 9 m/min',
  '\n',
  '# a remark',
  '0/0',
  '18/45',
  '1e308',
  '',
  '{{1/0}}',
  '<b>',
  'stay 6 days',
];

/** What can be poked inside a screen; links would leave it. */
function reachable(page: Page): Locator {
  return page
    .locator('main')
    .locator('button, select, input, textarea, [role="slider"], summary')
    .filter({ visible: true });
}

/** How much is to be read on a screen, characters. */
const shown = (page: Page) => page.evaluate(() => document.querySelector('main')?.textContent.trim().length ?? 0);

/** Presses, types and chooses at random on one screen; what it shows is never nothing. */
async function poke(page: Page, forMs: number): Promise<void> {
  const next = seeded(SEED);
  const pick = <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)]!;
  const home = page.url();
  const path = new URL(home).pathname;
  page.on('dialog', (dialog) => void dialog.dismiss());
  const end = Date.now() + forMs;
  while (Date.now() < end) {
    // A button may lead to another screen, with what it hands over there.
    if (new URL(page.url()).pathname !== path) {
      expect(await shown(page), page.url()).toBeGreaterThan(40);
      await page.goto(home, { waitUntil: 'load' });
    }
    const targets = await reachable(page).all();
    const quick = { timeout: 600 };
    const act = next();
    if (targets.length === 0 || act < 0.15) await page.keyboard.press(pick(KEYS));
    else {
      const target = pick(targets);
      await (async () => {
        const kind = await target.evaluate((element) => element.tagName, undefined, { timeout: 1000 });
        if (kind === 'SELECT') {
          const options = await target
            .locator('option')
            .evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
          await target.selectOption(pick(options), quick);
        } else if (kind === 'TEXTAREA' || (kind === 'INPUT' && act < 0.6)) await target.fill(pick(TYPED), quick);
        else await target.click(quick);
      })().catch(() => undefined);
    }
    await page.waitForLoadState();
    const characters = await shown(page).catch(() => Infinity);
    expect(characters, 'the screen is not blank').toBeGreaterThan(40);
  }
  await page.keyboard.press('Escape');
}

describe('random poking', () => {
  it(
    'of the desk finds no error in the console, and the desk still works',
    { timeout: DESK_MS + 150_000 },
    async () => {
      const { page, complaints } = await visit({ viewport: { width: 1280, height: 900 } });
      await arrive(page, routes.desk.path);
      await poke(page, DESK_MS);
      expect(complaints).toEqual([]);
      await arrive(page, routes.desk.path);
      await page.getByRole('button', { name: 'Script', exact: true }).click();
      await page
        .getByRole('textbox', { name: 'Dive script' })
        .fill('descend to 20 m at 18 m/min\nstay 10 min\nascend to surface at 9 m/min\n');
      // Whichever pictures have been put away and readings covered, the hand on time goes to the end of the new dive, after
      // 20/18 + 10 + 20/9 min; or a dive is still being steered.
      await page.locator('input[type=range][max="800"], [data-part="lever"]').first().waitFor();
      expect(complaints).toEqual([]);
    },
  );

  it.each([
    ['a lesson', lessonPath('04-no-stop-time'), undefined],
    ['a lesson being written', workshopPath, 'New lesson'],
    ['the bench', routes.bench.path, undefined],
    ['gases', routes.gases.path, undefined],
  ])(
    'of %s finds no error in the console, and never a blank screen',
    { timeout: SCREEN_MS + 110_000 },
    async (_, path, first) => {
      const { page, complaints } = await visit({ viewport: { width: 1280, height: 900 } });
      await arrive(page, path);
      if (first !== undefined) await page.getByRole('button', { name: first }).click();
      await poke(page, SCREEN_MS);
      expect(complaints).toEqual([]);
      await arrive(page, path);
      expect(await shown(page)).toBeGreaterThan(40);
      expect(complaints).toEqual([]);
    },
  );
});
