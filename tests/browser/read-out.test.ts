import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { openDesk } from './kept-desk';
import { arrive, browserVisits, settled } from './visit';

const visit = browserVisits();

/**
 * Main screens as a screen reader is given them, from top to bottom. Each file in read-out/ is to be read as by
 * someone who can't see: where one changes, read it before taking it over with `-u`.
 */
async function isAsRead(page: Page, name: string): Promise<void> {
  await settled(page);
  const given = await page.locator('main').ariaSnapshot();
  const text = given.replace(/^ *- \/url: .*\n?/gm, '');
  await expect.soft(text).toMatchFileSnapshot(`read-out/${name}.txt`);
}

describe('read out from top to bottom', () => {
  it('the desk at rest and before a class', async () => {
    const { page } = await visit();
    await openDesk(page);
    // Each mark on the dive is told in words and in the order of time, not as a number alone.
    const marks = page.getByRole('figure', { name: 'The dive' }).getByRole('img');
    await marks.filter({ hasText: 'a stop is owed' }).first().waitFor();
    await isAsRead(page, 'desk');
    await page.getByRole('button', { name: 'Present', exact: true }).click();
    await page.getByRole('group', { name: 'Presenting' }).waitFor();
    await isAsRead(page, 'desk-presented');
    expect(await page.getByRole('banner').count(), 'the head of the site stays out of a presentation').toBe(0);
  });

  it('a prediction, before and after it', async () => {
    const { page } = await visit();
    await arrive(page, lessonPath('04-no-stop-time', 'on-arrival'));
    await isAsRead(page, 'prediction');
    const answer = page.getByLabel('Your answer', { exact: true });
    await answer.fill('20');
    await page.getByRole('radio', { name: 'A guess' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Show what the model says' }).click();
    await page.getByText('The model says something else.').waitFor();
    await isAsRead(page, 'prediction-answered');
  });

  it.each([
    ['bench', routes.bench.path],
    ['bring', routes.bring.path],
    ['curves', routes.curves.path],
    ['class', routes.class.path],
    ['workshop', workshopPath],
  ])('%s', async (name, path) => {
    const { page } = await visit();
    await arrive(page, path);
    await isAsRead(page, name);
  });
});
