// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { workshopPath } from '@/app/parts/lesson-paths';
import { deskWithReef, openDesk } from './kept-desk';
import { doneIn, kept, openBench, openLesson, PROGRESS, run, said, write } from './kept-sheets';
import { browserVisits } from './visit';

const visit = browserVisits();

describe('two windows at once', () => {
  it('show one bench sheet, and what the one changed can be undone in the other', async () => {
    const { page } = await visit();
    await openBench(page);
    await write(page, 'first');
    const other = await page.context().newPage();
    await openBench(other, run('first'));
    await write(other, 'second');
    await write(other, 'third');
    await said(page, 'The sheet was changed in another window, and is shown here as it is there.');
    await page.getByRole('group', { name: 'Unit 1 at third' }).waitFor();
    await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('group', { name: 'Unit 1 at first' }).waitFor();
    await said(other, 'The sheet was changed in another window');
    await other.getByRole('group', { name: 'Unit 1 at first' }).waitFor();
    await other.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await other.getByRole('group', { name: 'Unit 1 at third' }).waitFor();
  });

  it('that do not hear of one another lose no sheet either: the later one is told, and can take the other', async () => {
    const { page } = await visit();
    await page
      .context()
      .addInitScript(() => window.addEventListener('storage', (event) => event.stopImmediatePropagation(), true));
    await openBench(page);
    const other = await page.context().newPage();
    await openBench(other);
    await write(other, 'theirs');
    await write(page, 'ours');
    await said(page, 'The sheet was changed in another window at the same time. This window’s is kept.');
    await page.getByRole('button', { name: 'Take the other' }).click();
    await page.getByRole('group', { name: 'Unit 1 at theirs' }).waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await page.getByRole('group', { name: 'Unit 1 at ours' }).waitFor();
  });

  it('in two lessons, or in one, lose nothing of what was done', async () => {
    const { page } = await visit();
    await openLesson(page);
    const other = await page.context().newPage();
    await openLesson(other, '01-pressure');
    const third = await page.context().newPage();
    await openLesson(third);
    await page.getByRole('button', { name: 'Go on' }).click();
    await other.getByRole('button', { name: 'Go on' }).click();
    expect(await doneIn(page), 'the first lesson').toHaveLength(1);
    expect(await doneIn(page, '01-pressure'), 'the second lesson').toHaveLength(1);
    await page.getByLabel('Your answer').fill('12');
    await page.getByText('A guess').click();
    await page.getByRole('button', { name: 'Show what the model says' }).click();
    await page.waitForFunction((key) => localStorage.getItem(key)?.includes('a guess'), PROGRESS);
    const before = await doneIn(page);
    await third
      .getByRole('button', { name: /^Go on/ })
      .first()
      .click();
    for (const step of before) expect(await doneIn(third)).toContain(step);
    expect(await kept(third, PROGRESS)).toContain('a guess');
  });

  it('that save a dive under one name say so, and the one before can be brought back', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    const other = await page.context().newPage();
    await openDesk(other);
    await other.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByRole('button', { name: 'Saved dives' }).click();
    for (const window of [page, other]) await window.getByRole('textbox', { name: 'Save this dive as' }).fill('Reef');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await said(page, 'Saved “Reef”.');
    await other.getByRole('button', { name: 'Replace', exact: true }).click();
    await said(other, 'Saved over “Reef”.');
    await other.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await other.getByRole('button', { name: 'Open Reef', exact: true }).waitFor();
  });

  it('that write one lesson keep what each has written', async () => {
    const { page } = await visit();
    await page.goto(workshopPath, { waitUntil: 'load' });
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page.getByRole('textbox', { name: 'Title' }).fill('Begun');
    await page.waitForTimeout(1000);
    const other = await page.context().newPage();
    await other.goto(workshopPath, { waitUntil: 'load' });
    await other.getByRole('button', { name: 'Open Begun' }).click();
    await other.getByRole('textbox', { name: 'Title' }).fill('Theirs');
    await other.waitForTimeout(1000);
    await page.getByRole('textbox', { name: 'Title' }).fill('Ours');
    await said(
      page,
      'This lesson was changed in another window too. What was written there is kept as a lesson of its own.',
    );
    await page.goto(workshopPath, { waitUntil: 'load' });
    await page.getByRole('button', { name: 'Open Ours' }).waitFor();
    await page.getByRole('button', { name: 'Open Theirs' }).waitFor();
  });
});
