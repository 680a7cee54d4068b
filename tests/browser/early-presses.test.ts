import { expect, it } from 'vitest';
import { browserVisits } from './visit';

const visit = browserVisits();

/** How long the parts that are fetched later are held back, ms. */
const HELD_MS = 2000;

it('what is pressed while a part of the desk is still being fetched is done once it is there, and once', async () => {
  const { page, complaints } = await visit();
  const html = await (await page.request.get('/desk/')).text();
  const first = new Set(Array.from(html.matchAll(/<script[^>]+src="([^"]+)"/g), ([, src]) => src!.split('/').at(-1)));
  let held = 0;
  await page.route('**/_next/static/chunks/**', async (route) => {
    if (!first.has(new URL(route.request().url()).pathname.split('/').at(-1)!)) {
      held += 1;
      await new Promise((later) => setTimeout(later, HELD_MS));
    }
    await route.continue();
  });
  await page.goto('/desk/', { waitUntil: 'commit' });
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  const clock = page.getByRole('group', { name: 'Time', exact: true }).locator('span[class*="clock"]').first();
  const before = await clock.textContent();
  expect(held).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'On 30 seconds' }).click();
  await page.getByRole('button', { name: 'Cover Time', exact: true }).click();
  expect(await clock.textContent(), 'held').toBe(before);
  await page.getByRole('button', { name: 'Uncover Time', exact: true }).waitFor({ timeout: 20_000 });
  const inS = (text: string | null) => {
    const [minutes, seconds] = text!.split(':').map(Number);
    return minutes! * 60 + seconds!;
  };
  await expect.poll(async () => inS(await clock.textContent()) - inS(before)).toBe(30);
  // From then on a press is heard at once.
  await page.getByRole('button', { name: 'Back 30 seconds' }).click();
  await expect.poll(() => clock.textContent(), { timeout: 1000 }).toBe(before);
  await page.unrouteAll({ behavior: 'wait' });
  expect(complaints).toEqual([]);
});
it('what is written and pressed on the bench’s form before any of its code is there stands in the sheet, and once', async () => {
  const { page, complaints } = await visit();
  await page.route('**/_next/static/chunks/*.js', async (route) => {
    await new Promise((later) => setTimeout(later, HELD_MS));
    await route.continue();
  });
  await page.goto('/bench/', { waitUntil: 'commit' });
  const units = page.getByRole('textbox', { name: 'Name or number' });
  await page.getByRole('textbox', { name: 'Who runs it' }).fill('Test chamber crew');
  const before = await units.count();
  await page.getByRole('button', { name: 'Add a unit' }).click();
  expect(await units.count(), 'held').toBe(before);
  await expect.poll(() => units.count(), { timeout: 20_000 }).toBe(before + 1);
  expect(await page.getByRole('textbox', { name: 'Who runs it' }).inputValue()).toBe('Test chamber crew');
  await page.unrouteAll({ behavior: 'wait' });
  // It is the sheet that has it, not the box alone.
  await page.reload();
  await expect.poll(() => page.getByRole('textbox', { name: 'Who runs it' }).inputValue()).toBe('Test chamber crew');
  expect(complaints).toEqual([]);
});
