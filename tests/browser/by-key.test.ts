import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { drawn } from './drawn';
import { openDesk, restored } from './kept-desk';
import { arrive, browserVisits, settled } from './visit';

const visit = browserVisits();

/** What has the focus, as it is called; `body` where nothing has. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof Element) || element === document.body) return 'body';
    const labels = element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : undefined;
    return (element.getAttribute('aria-label') ?? labels ?? element.textContent ?? '').replace(/\s+/g, ' ').trim();
  });

/** Waits until the focus is on it. */
const isOn = (page: Page, name: string | RegExp) =>
  expect.poll(() => focused(page), { timeout: 10_000 }).toEqual(expect.stringMatching(name));

/** Goes there by Tab alone and says how many presses it took. */
async function pressesTo(page: Page, name: RegExp, most: number): Promise<number> {
  for (let presses = 1; presses <= most; presses += 1) {
    await page.keyboard.press('Tab');
    if (name.test(await focused(page))) return presses;
  }
  throw new Error(`${most} presses of Tab do not reach ${String(name)}; the focus is on “${await focused(page)}”`);
}

/** Puts the focus there as its own press would, without the many presses on the way. */
const goTo = (page: Page, role: 'button' | 'slider' | 'checkbox', name: string) =>
  page.getByRole(role, { name, exact: true }).first().focus();

describe('by key alone the focus goes where the work goes on', () => {
  it('on the desk: Play, events, why, undo, a picture put away, covering, steering', async () => {
    const { page, complaints } = await visit();
    await openDesk(page);
    expect(await pressesTo(page, /^Play$/, 5)).toBeLessThanOrEqual(5);
    await page.keyboard.press('Enter');
    await isOn(page, /^Pause$/);
    await page.keyboard.press('Enter');
    await isOn(page, /^Play$/);

    // To the last event and past it: the button that has nothing more to do keeps the focus.
    await goTo(page, 'button', 'To the next event');
    for (let press = 0; press < 20; press += 1) await page.keyboard.press('Enter');
    await isOn(page, /^To the next event$/);
    expect(await page.getByRole('button', { name: 'To the next event' }).getAttribute('aria-disabled')).toBe('true');

    // A reading is said before its buttons, and its “why?” is within three presses of it.
    for (const reading of ['no-stop', 'ceiling', 'required-stop', 'rate']) {
      const order = await page
        .locator(`[data-reading="${reading}"]`)
        .evaluate((tile) => [...tile.querySelectorAll('p, button')].map((one) => one.tagName));
      expect(order.lastIndexOf('P'), reading).toBeLessThan(order.indexOf('BUTTON'));
    }
    await goTo(page, 'button', 'Cover Time');
    expect(await pressesTo(page, /^Why this no-stop time\?/, 3)).toBeLessThanOrEqual(3);
    await page.keyboard.press('Enter');
    const answer = page.locator('dialog[open]');
    await answer.locator('math').first().waitFor();
    expect(await answer.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    expect(await focused(page), 'the answer comes before what puts it away').not.toMatch(/^Close/);
    await page.keyboard.press('Escape');
    await isOn(page, /^Why this no-stop time\?/);

    await goTo(page, 'button', 'Cover Depth');
    await page.keyboard.press('Enter');
    await isOn(page, /^Uncover Depth$/);
    await page.keyboard.press('Enter');
    await isOn(page, /^Cover Depth$/);

    // The last change undone.
    await goTo(page, 'button', 'Undo');
    for (let press = 0; press < 4; press += 1) await page.keyboard.press('Enter');
    await isOn(page, /^Undo$/);
    expect(await page.getByRole('button', { name: 'Undo' }).getAttribute('aria-disabled')).toBe('true');

    // A picture put away from its own menu.
    await goTo(page, 'button', 'Tools of The chase');
    await page.keyboard.press('Enter');
    const tools = page.getByRole('group', { name: 'Tools of The chase' });
    await tools.getByText('Choose pictures').focus();
    await page.keyboard.press('Enter');
    await tools.getByRole('checkbox', { name: 'The chase' }).focus();
    await page.keyboard.press('Space');
    await isOn(page, /^Tools of The dive$/);

    await goTo(page, 'button', 'Steer by hand');
    await page.keyboard.press('Enter');
    await isOn(page, /^Lever/);
    for (let press = 0; press < 4; press += 1) await page.keyboard.press('PageDown');
    await expect
      .poll(
        async () => Number(/\d+\.\d/.exec((await page.locator('[data-reading="depth"]').textContent()) ?? '')?.[0]),
        {
          timeout: 30_000,
        },
      )
      .toBeGreaterThan(1);
    await page.keyboard.press('Space');
    await goTo(page, 'button', 'Keep');
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Keep this dive' });
    await dialog.waitFor();
    expect(await dialog.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    await dialog.getByLabel('Its name').focus();
    await page.keyboard.press('Enter');
    await isOn(page, /^Play$/);
    expect(complaints).toEqual([]);
  }, 120_000);

  it('in a lesson: to the first thing that is missing, and to the verdict', async () => {
    const { page } = await visit();
    await arrive(page, lessonPath('04-no-stop-time', 'on-arrival'));
    await goTo(page, 'button', 'Show what the model says');
    await page.keyboard.press('Enter');
    await isOn(page, /^Your answer$/);
    await page.getByText('Answer the question first.').waitFor();
    await page.keyboard.type('20');
    await goTo(page, 'button', 'Show what the model says');
    await page.keyboard.press('Enter');
    await isOn(page, /^A guess$/);
    await page.getByRole('radio', { name: 'A guess' }).focus();
    await page.keyboard.press('Space');
    await goTo(page, 'button', 'Show what the model says');
    await page.keyboard.press('Enter');
    await isOn(page, /The model says something else\./);
  });

  it.each(
    drawn(
      [
        ['04-no-stop-time', 30],
        // One step has the rules of a unit to set.
        ['08-too-fast', 50],
      ] as const,
      1,
    ),
  )(
    'every step of lesson %s has its work and its way on within %i presses of its head',
    async (slug, most) => {
      const { page } = await visit();
      await arrive(page, lessonPath(slug));
      const head = page.locator('[data-part="step"] h2').first();
      for (let on = true; on;) {
        const name = await head.textContent();
        await head.focus();
        expect.soft(await pressesTo(page, /^(Go on|To your results)$/, 60), `${name}`).toBeLessThanOrEqual(most);
        on = (await focused(page)) === 'Go on';
        await page.keyboard.press('Enter');
        await expect.poll(() => head.textContent()).not.toBe(name);
        // The step turned to has the focus, from where it is read.
        await isOn(page, (await head.textContent())!);
      }
    },
    120_000,
  );

  it('among curves, at the bench and on the front page', async () => {
    const { page } = await visit();
    await arrive(page, routes.curves.path);
    await goTo(page, 'button', 'Add a curve');
    await page.keyboard.press('Enter');
    await page
      .getByRole('button', { name: /^Remove curve \d/ })
      .last()
      .focus();
    await page.keyboard.press('Enter');
    await isOn(page, /^Add a curve$/);

    await arrive(page, routes.bench.path);
    await goTo(page, 'button', 'Start the clock');
    await page.keyboard.press('Enter');
    await goTo(page, 'button', 'Put the clock back');
    await page.keyboard.press('Enter');
    await isOn(page, /^Start the clock$/);

    await arrive(page, '/');
    await page.getByRole('link', { name: 'Watch a unit ask for a stop' }).first().focus();
    await page.keyboard.press('Enter');
    await restored(page);
    await settled(page);
    await isOn(page, /^Pause$/);
  }, 60_000);
});
