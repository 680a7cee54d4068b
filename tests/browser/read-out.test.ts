import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { isAsRead as isAsReadNow } from './as-read';
import { openDesk } from './kept-desk';
import { arrive, browserVisits, settled } from './visit';

const visit = browserVisits();

async function isAsRead(page: Page, name: string): Promise<void> {
  await settled(page);
  await isAsReadNow(page, name);
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

  it('a curve to be predicted, typed and read back', async () => {
    const { page } = await visit();
    await arrive(page, lessonPath('04-no-stop-time', 'draw-the-fall'));
    await page.getByRole('textbox', { name: 'at 0:00' }).fill('60');
    await page.getByRole('textbox', { name: 'at 1:40' }).fill('11');
    await page.getByText('Your curve: 60 min at 0:00, down to 11 min at 1:40.').waitFor({ state: 'attached' });
    await isAsRead(page, 'curve-typed');
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
