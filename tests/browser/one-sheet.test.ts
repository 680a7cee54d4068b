import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn } from './drawn';
import { written } from './kept-desk';
import { browserVisits } from './visit';
import { TOGETHER, sheet } from './whole-sheet';

const visit = browserVisits();

const SIZES = [
  [1920, 1080],
  [1440, 900],
  [1280, 720],
  [1024, 768],
  [820, 1180],
  [390, 844],
] as const;

async function playing(page: Page): Promise<void> {
  await page.goto('/desk/#play=overstayed');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await page.getByText('Opened “Six minutes too long” to play.').waitFor();
}

/** On a phone the way to the lever is in a menu. */
async function startSteering(page: Page, width: number): Promise<void> {
  if (width < 768) await page.getByRole('button', { name: 'Speed and steering' }).click();
  await page.getByRole('button', { name: 'Steer by hand' }).click();
  await page.getByRole('slider', { name: /^Lever/ }).waitFor();
}

/** Waits until the diver is so deep, m. */
async function reached(page: Page, depthM: number): Promise<void> {
  await page.waitForFunction(
    (least) =>
      Number(/\d+\.\d/.exec(document.querySelector('[data-reading="depth"]')?.textContent ?? '')?.[0]) >= least,
    depthM,
    { timeout: 60_000 },
  );
}

/** The least share of the window that the pictures have, %. */
const leastIn = (width: number): number => (width >= 1024 ? 45 : 0);

describe.each(SIZES)('the desk on one sheet at %i × %i', (width, height) => {
  const least = leastIn(width);

  it('has cause and effect in one look: playing, in either system, asked why, and before a class', async () => {
    const { page, complaints } = await visit({ viewport: { width, height } });
    await playing(page);
    const shown = await sheet(page);
    expect.soft(shown.faults, 'playing').toEqual([]);
    expect.soft(shown.share, 'playing').toBeGreaterThanOrEqual(least);
    expect.soft(shown.scrolls).toBeLessThanOrEqual(0);

    // On a phone the answer takes the window, and gives it back.
    if (width > 768) {
      await page.locator('[data-reading="no-stop"]').hover();
      await page.getByRole('button', { name: 'Why this no-stop time?', exact: true }).click();
      await page.locator('dialog[open] math').first().waitFor();
      const asked = await sheet(page);
      expect.soft(asked.faults, 'asked why').toEqual([]);
      expect.soft(asked.share, 'asked why').toBeGreaterThanOrEqual(width >= 1024 ? 40 : 0);
      await page.keyboard.press('Escape');
      await page.locator('dialog[open]').waitFor({ state: 'detached' });
    }

    await page.getByRole('button', { name: 'Present', exact: true }).click();
    await page.getByRole('group', { name: 'Presenting' }).waitFor();
    const presented = await sheet(page);
    expect.soft(presented.faults, 'presented').toEqual([]);
    expect.soft(presented.share, 'presented').toBeGreaterThanOrEqual(least);
    expect(complaints).toEqual([]);
  }, 90_000);
});

// A diver takes half a minute to go down by hand, so each run steers in other windows.
describe.each(drawn(SIZES, 2))('the desk on one sheet at %i × %i, steered or in feet,', (width, height) => {
  it('has it while a dive is steered, and before a class, with the lever and its alarm in sight and nothing moving', async () => {
    const { page, complaints } = await visit({ viewport: { width, height } });
    await page.goto('/desk/');
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    await startSteering(page, width);
    await page.keyboard.press('PageDown');
    await reached(page, 8);
    const steering = await sheet(page, [...TOGETHER, '[data-part="lever"]', '[data-part="insist"]']);
    expect.soft(steering.faults, 'steering').toEqual([]);
    expect.soft(steering.share, 'steering').toBeGreaterThanOrEqual(width >= 1024 ? 40 : 0);
    expect.soft(steering.scrolls).toBeLessThanOrEqual(0);

    // An alarm comes into its own line, and the lever stays under the hand.
    const lever = page.getByRole('slider', { name: /^Lever/ });
    const before = await lever.boundingBox();
    for (let press = 0; press < 4; press += 1) await page.keyboard.press('PageUp');
    await page
      .locator('[data-part="insist"]')
      .getByText(/slow down\./i)
      .waitFor();
    expect.soft(await lever.boundingBox()).toEqual(before);
    expect.soft(await page.evaluate(() => [scrollX, scrollY])).toEqual([0, 0]);
    await page.keyboard.press('Space');

    await page.getByRole('button', { name: 'Present', exact: true }).click();
    await page.getByRole('group', { name: 'Presenting' }).waitFor();
    await lever.waitFor();
    const presented = await sheet(page, [...TOGETHER, '[data-part="lever"]']);
    expect.soft(presented.faults, 'presented').toEqual([]);
    expect.soft(presented.share, 'presented').toBeGreaterThanOrEqual(width >= 1024 ? 40 : 0);
    expect(complaints).toEqual([]);
  }, 90_000);

  it('has it in feet as well', async () => {
    const { page } = await visit({ viewport: { width, height }, preferences: { units: 'imperial' } });
    await playing(page);
    const { faults, share } = await sheet(page);
    expect.soft(faults).toEqual([]);
    expect(share).toBeGreaterThanOrEqual(leastIn(width));
  });
});

it('nothing moves from start to end of a dive that plays', { tags: 'every-run', timeout: 90_000 }, async () => {
  const { page } = await visit({ viewport: { width: 1024, height: 768 } });
  await playing(page);
  await page.evaluate(() => {
    const moved: string[] = [];
    Object.assign(window, { moved });
    interface Shift extends PerformanceEntry {
      readonly value: number;
      readonly sources: readonly { node: Node | null; previousRect: DOMRect; currentRect: DOMRect }[];
    }
    const told = ({ node, previousRect: from, currentRect: to }: Shift['sources'][number]) =>
      `${node?.parentElement?.outerHTML.slice(0, 300)} from ${from.x}, ${from.y} to ${to.x}, ${to.y}`;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Shift[])
        moved.push(`${entry.value}: ${entry.sources.map(told).join('; ')}`);
    }).observe({ type: 'layout-shift' });
  });
  await page.getByRole('combobox', { name: 'Speed' }).selectOption('120');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor({ timeout: 60_000 });
  expect((await page.evaluate(() => (window as unknown as { moved: string[] }).moved)).join('\n')).toBe('');
});

it('Space plays and pauses wherever no field has the focus, and Play is within five keys', async () => {
  const { page } = await visit();
  await page.goto('/desk/');
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  const script = page.getByRole('textbox', { name: 'Dive script' });
  await script.focus();
  await page.keyboard.press('Space');
  expect(await page.getByRole('button', { name: 'Pause' }).count()).toBe(0);
  await page.reload();
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  const reached: (string | null | undefined)[] = [];
  for (let press = 0; press < 5; press += 1) {
    await page.keyboard.press('Tab');
    reached.push(await page.evaluate(() => document.activeElement?.getAttribute('aria-label')));
  }
  expect(reached).toContain('Play');
});

describe('steering', () => {
  it('by touch: a finger on the lever holds it, a tap sets a speed that stays, and the page does not scroll', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await page.goto('/desk/');
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    await startSteering(page, 390);
    const lever = page.getByRole('slider', { name: /^Lever/ });
    const box = (await lever.boundingBox())!;
    // A tap at 18 downward.
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height * ((1 + (18 / 40) ** (1 / 1.6)) / 2));
    expect(await lever.getAttribute('aria-valuetext')).toBe('down at 18 m/min');
    await reached(page, 3);
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    expect(await lever.getAttribute('aria-valuetext')).toBe('level');
    const touch = await page.context().newCDPSession(page);
    const at = (share: number) => [{ x: box.x + box.width / 2, y: box.y + box.height * share }];
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0.5) });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(0.7) });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(0.9) });
    await page.waitForFunction(() => /^down at/.test(document.querySelector('[data-lever]')!.ariaValueText ?? ''));
    await page.waitForTimeout(400);
    expect(
      await page.evaluate(() => [scrollX, scrollY, document.querySelector('[data-part="lever"]')!.scrollTop]),
    ).toEqual([0, 0, 0]);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.waitForFunction(() => document.querySelector('[data-lever]')!.ariaValueText === 'level');
  }, 90_000);

  it('with one switch: pressed, time stands still and speeds are offered in turn; pressed again, one is taken', async () => {
    const { page } = await visit();
    await page.goto('/desk/');
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    await startSteering(page, 1440);
    await page.getByRole('button', { name: 'Offer speeds' }).focus();
    await page.keyboard.press('Enter');
    const offer = page.locator('[data-part="lever"] [aria-pressed="true"]');
    for (const words of ['level?', 'up at 3 m/min?', 'down at 3 m/min?']) await offer.getByText(words).waitFor();
    await page.keyboard.press('Enter');
    expect(await page.getByRole('slider', { name: /^Lever/ }).getAttribute('aria-valuetext')).toBe('down at 3 m/min');
    await reached(page, 1);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Run' }).waitFor();
  }, 60_000);

  it('goes back to any moment of the run and on from there, and what that cut off can be put back', async () => {
    const { page } = await visit();
    await page.goto('/desk/');
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    await startSteering(page, 1440);
    const moment = page.getByRole('slider', { name: 'Moment of the run' });
    await page.keyboard.press('PageDown');
    await reached(page, 6);
    await page.keyboard.press('Space');
    const whole = Number(await moment.inputValue());
    await moment.fill(String(Math.round(whole / 2)));
    await page.getByRole('button', { name: 'Steer on from here' }).click();
    await page.keyboard.press('0');
    await page.getByRole('button', { name: /^Put back to/ }).waitFor();
    await page.keyboard.press('Space');
    expect(Number(await moment.getAttribute('max'))).toBeLessThan(whole);
    await page.getByRole('button', { name: /^Put back to/ }).click();
    await expect.poll(async () => Number(await moment.getAttribute('max'))).toBe(whole);
  }, 60_000);
});

it('a ready dive opens at its stop, and what is pressed and typed before the page is live is done once it is', async () => {
  const { page } = await visit();
  // The page is there before its scripts are.
  await page.route('**/_next/static/chunks/**', async (route) => {
    await new Promise((later) => setTimeout(later, 800));
    await route.continue();
  });
  await page.goto('/desk/', { waitUntil: 'commit' });
  const script = page.getByRole('textbox', { name: 'Dive script' });
  await script.waitFor();
  expect(await page.locator('[data-reading="required-stop"]').textContent()).toContain('3');
  expect(await page.locator('html[data-ready]').count()).toBe(0);
  const typed = 'descend to 12 m at 18 m/min\nstay 9 min\nascend to surface at 9 m/min\n';
  await script.fill(typed);
  await page.getByRole('button', { name: 'Readings', exact: true }).click();
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'Readings', exact: true, pressed: true }).waitFor();
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  await written(page, typed);
  await page.unrouteAll({ behavior: 'wait' });
  await page.reload();
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
  await expect.poll(() => script.inputValue()).toBe(typed);
}, 60_000);
