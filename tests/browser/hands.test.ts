// @module-tag in-turn
import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

const script = (page: Page) => page.getByRole('textbox', { name: 'Dive script' }).inputValue();

async function middleOf(page: Page, name: RegExp): Promise<readonly [x: number, y: number]> {
  const box = (await page.getByRole('slider', { name }).boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** A finger put down, moved and lifted, as the browser gets it from a touch screen: it may scroll with it. */
async function swipe(touch: CDPSession, [x, y]: readonly [number, number], byX: number, byY: number): Promise<void> {
  const at = (share: number) => [{ x: x + byX * share, y: y + byY * share }];
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let step = 1; step <= 12; step += 1)
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(step / 12) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

/** The points of the dive by what they are called: their depths and times. */
const points = (page: Page) =>
  page
    .getByRole('slider', { name: /^Point \d/ })
    .evaluateAll((found) => found.map((point) => point.getAttribute('aria-valuetext')));

/** How far anything on the page is scrolled, px. */
const scrolled = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')].reduce((sum, element) => sum + element.scrollTop + element.scrollLeft, 0),
  );

describe('a finger on the dive', () => {
  // More pictures than have room at once, so that there is something to scroll.
  const crowded = async () => {
    const { page } = await visit({ viewport: { width: 820, height: 700 }, hasTouch: true });
    await arrive(page, '/desk/');
    const choose = page.getByText('Choose pictures').locator('visible=true');
    // A press on a picture whose code has just not come yet opens nothing.
    await expect
      .poll(
        async () => {
          if ((await choose.count()) === 0) await page.getByRole('button', { name: 'Tools of The dive' }).click();
          return choose.count();
        },
        { interval: 1000, timeout: 30_000 },
      )
      .toBe(1);
    await choose.click();
    for (const name of ['The loading map', 'Supersaturation', 'No-stop time'])
      await page.getByRole('checkbox', { name }).check();
    await page.keyboard.press('Escape');
    await page.getByRole('slider', { name: /^Point 1$/ }).waitFor();
    return { page, touch: await page.context().newCDPSession(page) };
  };

  it('drags a point, and nothing scrolls', { tags: 'every-run' }, async () => {
    const { page, touch } = await crowded();
    expect((await points(page))[0]).toMatch(/^30 m/);
    await swipe(touch, await middleOf(page, /^Point 1$/), 0, -70);
    expect(await scrolled(page)).toBe(0);
    expect((await points(page))[0]).toMatch(/^[12]\d m/);
  });

  it('anywhere else in the picture scrolls the page, and the dive stays as it is', async () => {
    const { page, touch } = await crowded();
    const before = await points(page);
    const [x, y] = await middleOf(page, /^Point 1$/);
    const [farX] = await middleOf(page, /^Point 2$/);
    await swipe(touch, [(x + farX) / 2, y], 0, -70);
    await page.waitForFunction(() => [...document.querySelectorAll('*')].some((element) => element.scrollTop > 20));
    expect(await points(page)).toEqual(before);
  });
});

it('a double click on a leg puts a point there, and the dive stays what it was', async () => {
  const { page } = await visit();
  await arrive(page, '/desk/');
  const readings = () => page.locator('[data-reading="required-stop"], [data-reading="ceiling"]').allInnerTexts();
  await page.getByRole('slider', { name: 'Time cursor' }).fill(String(18 * 60));
  // The readings follow the time controls by a frame.
  await page.locator('[data-reading="time"]').getByText('18:00').waitFor();
  const before = await readings();
  const count = await page.getByRole('slider', { name: /^Point \d/ }).count();
  for (const [from, to] of [
    [/^Point 1$/, /^Point 2$/],
    [/^Point 3$/, /^Point 4$/],
  ] as const) {
    const [[x1, y1], [x2, y2]] = [await middleOf(page, from), await middleOf(page, to)];
    await page.mouse.dblclick((x1 + x2) / 2, (y1 + y2) / 2);
  }
  expect(await page.getByRole('slider', { name: /^Point \d/ }).count()).toBe(count + 2);
  expect(await readings()).toEqual(before);
  expect(await script(page)).toMatch(/stay \d+ min( \d+ s)?\nstay \d+ min( \d+ s)? +# the no-stop time runs out/);
});

it('Space plays on where a button has been clicked, and presses the one that Tab has led to', async () => {
  const { page } = await visit();
  await arrive(page, '/desk/');
  await page.getByRole('button', { name: 'On 30 seconds' }).click();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  await page.getByRole('button', { name: 'Back 30 seconds' }).click();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
});

it(
  'each “why?” of the readings is answered to a tap, and stays where it is tapped',
  { tags: ['every-run'] },
  async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await page.goto('/desk/#play=overstayed');
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    const asks = page.locator('[data-strip]').getByRole('button', { name: /^Why / });
    await asks.nth(3).waitFor();
    for (const ask of await asks.all()) {
      const before = await ask.boundingBox();
      await ask.tap();
      await page.getByRole('dialog', { name: /^Why\?/ }).waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      expect(await ask.boundingBox()).toEqual(before);
    }
  },
);
