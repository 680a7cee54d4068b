import { describe, expect, it } from 'vitest';
import { progressKind } from '@/app/keep/lesson-progress';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { deskWithReef, REEF, script } from './kept-desk';
import { accessibilityFaults, arrive, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

describe('the front door', () => {
  // One visit for all of it.
  it('has letters, set in the fonts the app ships, asks nothing of any other machine, says the caution first, on screen and at the head of each printed page, and lets the keyboard skip to the page', async () => {
    const { page } = await visit();
    const elsewhere: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith('http://localhost')) elsewhere.push(request.url());
    });
    await arrive(page, '/');
    const widthPx = await page.getByRole('heading', { level: 1 }).evaluate((heading) => {
      const range = document.createRange();
      range.selectNodeContents(heading);
      return range.getBoundingClientRect().width;
    });
    expect(widthPx, 'the browser under test really has letters').toBeGreaterThan(100);
    const loaded = await page.evaluate(async () => {
      await document.fonts.ready;
      return [...document.fonts]
        .filter((font) => font.status === 'loaded')
        .map((font) => font.family.replaceAll('"', ''));
    });
    expect.soft(loaded).toEqual(expect.arrayContaining(['Source Sans 3 Variable', 'Source Serif 4 Variable']));

    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect.soft(await page.evaluate(() => document.activeElement?.id)).toBe('main');

    const strip = page.getByRole('complementary', { name: 'Caution' });
    expect.soft(await strip.textContent()).toBe(cautions.general);
    expect.soft(await strip.isVisible()).toBe(true);
    await page.emulateMedia({ media: 'print' });
    // The one thing browsers repeat on every sheet is a table's head that can't be split.
    expect
      .soft(
        await strip.evaluate((element) => {
          const { display, breakInside } = getComputedStyle(element);
          return { display, breakInside };
        }),
      )
      .toEqual({ display: 'table-header-group', breakInside: 'avoid' });
    expect.soft(await page.getByRole('navigation', { name: 'Screens' }).isVisible()).toBe(false);
    expect(elsewhere).toEqual([]);
  });

  it(
    'holds up with its table open: nothing axe can find, and no scrolling sideways however narrow the window',
    { tags: 'in-turn' },
    async () => {
      const { page } = await visit({ viewport: { width: 768, height: 844 } });
      await page.goto('/');
      await page.getByText(/^Table of /).click();
      expect(await accessibilityFaults(page)).toEqual([]);
      for (const width of [768, 390, 320]) {
        await page.setViewportSize({ width, height: 844 });
        expect(await sidewaysPx(page), `${width} px`).toBe(0);
      }
    },
  );
});

describe('the doors', () => {
  it('lead an instructor to a dive that plays, and to a unit that asks for a stop, in one click and under a minute', async () => {
    const { page, complaints } = await visit();
    await page.goto('/');
    await page.getByRole('link', { name: 'Watch a unit ask for a stop' }).first().click();
    await page.getByRole('button', { name: 'Pause' }).waitFor();
    await page.getByText('Opened “Six minutes too long” to play.').waitFor();
    await page.getByText(/you need to stop there for \d+ min/).waitFor({ timeout: 45_000 });
    expect(await page.getByRole('button', { name: 'Pause' }).isVisible()).toBe(true);
    expect(complaints).toEqual([]);
  });

  it(
    'put nothing in the place of a dive without keeping it: undo brings it back, and it is among the saved dives',
    { tags: 'in-turn' },
    async () => {
      const { page } = await visit();
      await deskWithReef(page);
      await page.goto('/');
      await page.getByRole('link', { name: 'Watch staged stops on three gases' }).click();
      await page.getByText('What was on your desk is among your saved dives.').waitFor();
      await page.getByRole('button', { name: 'Pause' }).click();
      expect(await script(page).inputValue()).toContain('# Staged stops on three gases');
      await page.getByRole('button', { name: 'Undo' }).click();
      expect(await script(page).inputValue()).toBe(REEF);
      expect(new URL(page.url()).hash).toBe('');
      await page.getByRole('button', { name: 'Saved dives' }).click();
      await page.getByRole('button', { name: 'Open A reef at eighteen metres (left on the desk)' }).waitFor();
    },
  );

  it('say so where an address asks for a ready dive that is not here', async () => {
    const { page } = await visit();
    await page.goto(`${routes.desk.path}#play=lunch`);
    await page.getByRole('alert').filter({ hasText: 'asks for a ready dive that is not here' }).waitFor();
    expect(new URL(page.url()).hash).toBe('');
  });

  it('lead a student into the first lesson in one click', async () => {
    const { page } = await visit();
    await page.goto('/');
    await page.getByRole('link', { name: 'Start the first lesson' }).click();
    await page.getByRole('heading', { level: 1, name: 'Pressure, and what gas does under it' }).waitFor();
  });

  it('keep the place free where an earlier visit is found, so that nothing moves', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 844 } });
    const record = JSON.stringify({
      state: { progress: { lessons: { '01-pressure': { done: ['the-air-above'] } } } },
      version: 1,
    });
    await page.addInitScript(([key, record]) => localStorage.setItem(key, record), [
      progressKind.name,
      record,
    ] as const);
    await page.goto('/', { waitUntil: 'commit' });
    const below = page.getByRole('heading', { name: 'Six minutes too long' });
    const before = await below.boundingBox();
    await page.getByRole('link', { name: /^Pressure, and what gas does under it, 1 of \d+ steps seen$/ }).waitFor();
    expect(await below.boundingBox()).toEqual(before);
  });
});

describe('an address that leads nowhere', () => {
  it('says so and shows the way back', async () => {
    const { page } = await visit();
    const response = await page.goto('/nowhere/');
    expect(response?.status()).toBe(404);
    await page.getByRole('link', { name: 'Go to the front door' }).click();
    await page.getByRole('heading', { level: 1, name: /asks for a stop/ }).waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
  });
});
