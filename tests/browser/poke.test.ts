import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserVisits } from './visit';

const visit = browserVisits();

const SEED = 20_261_125;
const POKING_MS = 60_000;
const KEYS = ['Tab', 'Enter', 'Escape', 'Space', 'ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Delete', 'Insert', 'Control+z', 'Control+y'];
const TYPED = ['30 m', '100 ft', '-1', 'x', '99999', '2:50', 'descend to 12 m at 9 m/min', '\n', '# a remark', '0/0', '18/45'];

/** Numbers from 0 to 1 that are the same at every run (the mulberry32 generator, public domain). */
function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** What can be poked inside the desk; links would leave it. */
function reachable(page: Page): Locator {
  return page.locator('main').locator('button, select, input, textarea, [role="slider"], summary').filter({ visible: true });
}

describe('random poking of the desk for a minute', () => {
  it('finds no error in the console, and the desk still works', { timeout: 180_000 }, async () => {
    const { page, complaints } = await visit({ viewport: { width: 1280, height: 900 } });
    const next = seededNumbers(SEED);
    const pick = <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)]!;
    page.on('dialog', (dialog) => void dialog.dismiss());
    await page.goto('/desk/', { waitUntil: 'networkidle' });
    const end = Date.now() + POKING_MS;
    while (Date.now() < end) {
      const targets = await reachable(page).all();
      const target = pick(targets);
      const kind = await target.evaluate((element) => element.tagName, undefined, { timeout: 1000 }).catch(() => undefined);
      const quick = { timeout: 600 };
      const act = next();
      await (async () => {
        if (act < 0.15) await page.keyboard.press(pick(KEYS));
        else if (kind === 'SELECT') {
          const options = await target.locator('option').evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
          await target.selectOption(pick(options), quick);
        } else if (kind === 'TEXTAREA' || (kind === 'INPUT' && act < 0.6)) await target.fill(pick(TYPED), quick);
        else await target.click(quick);
      })().catch(() => undefined);
    }
    expect(complaints).toEqual([]);
    await page.keyboard.press('Escape');
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByRole('textbox', { name: 'Dive script' }).fill('descend to 20 m at 18 m/min\nstay 10 min\nascend to surface at 9 m/min\n');
    await page.getByRole('slider', { name: /^Point 3:/ }).waitFor();
    expect(complaints).toEqual([]);
  });
});
