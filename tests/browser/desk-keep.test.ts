// @module-tag in-turn
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { cautions } from '@/content/cautions';
import { deskWithReef, openDesk, REEF, restored, script } from './kept-desk';
import { accessibilityFaults, arrive, browserVisits } from './visit';
import { blockStorage } from './spoilt-storage';

const visit = browserVisits();

async function saveAs(page: Page, name: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Save this dive as' }).fill(name);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByRole('button', { name: `Open ${name}` }).waitFor();
}

describe('the desk between visits', () => {
  it('finds its dive, its cover and its moment again after a reload', { tags: 'every-run' }, async () => {
    const { page, complaints } = await visit();
    await deskWithReef(page);
    await page.getByRole('button', { name: 'Cover No-stop time' }).click();
    await page.getByRole('slider', { name: 'Time cursor' }).fill('600');
    // No wait: the window may be closed the moment after.
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(REEF);
    expect(await page.getByRole('button', { name: 'Uncover No-stop time' }).isVisible()).toBe(true);
    expect(await page.getByRole('slider', { name: 'Time cursor' }).inputValue()).toBe('600');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('knows the way back to the step a dive came from, after a reload too, and on no later visit', async () => {
    const { page } = await visit();
    await arrive(page, `${lessonPath('04-no-stop-time')}#open-the-number`);
    await page.getByRole('button', { name: 'Try this dive on the desk' }).click();
    const back = page.getByRole('link', { name: 'Back to the lesson' });
    await back.waitFor();
    await page.reload();
    await restored(page);
    await back.click();
    await page.waitForURL(`**${lessonPath('04-no-stop-time')}#open-the-number`);
    await openDesk(page);
    expect(await back.count()).toBe(0);
  });

  it('keeps a script that makes no sense yet, and the picture of the last that did', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await script(page).fill(`${REEF}stay for lunch\n`);
    await page.reload();
    await page.getByText('The pictures show the last dive that made sense.').waitFor();
    expect(await script(page).inputValue()).toBe(`${REEF}stay for lunch\n`);
    expect(await page.getByRole('figure', { name: 'The dive', exact: true }).textContent()).toContain('to 18 m');
  });

  it('sets a record it cannot read aside, says so, and opens', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('halftime.desk');
          opening.onsuccess = () => {
            const transaction = opening.result.transaction('records', 'readwrite');
            transaction.objectStore('records').put({ version: 1, script: 17 }, 'desk');
            transaction.oncomplete = () => {
              opening.result.close();
              resolve();
            };
          };
        }),
    );
    await page.reload();
    await page.getByText(/can’t be read, so the desk opens with a ready dive\. It is set aside, not lost/).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save it as a file' }).click(),
    ]);
    expect(JSON.parse(await readFile(await download.path(), 'utf8'))).toEqual({
      caution: cautions.general,
      record: { version: 1, script: 17 },
    });
  });

  it('says plainly that nothing can be kept where storage is blocked, and works on', async () => {
    const { page, complaints } = await visit();
    await blockStorage(page.context());
    await openDesk(page);
    await script(page).fill(REEF);
    await page.locator('[data-kept="blocked"]').waitFor();
    expect(await page.getByText('your work lasts until the page is closed').isVisible()).toBe(true);
    expect(await page.getByRole('figure', { name: 'The dive', exact: true }).textContent()).toContain('to 18 m');
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByText('Nothing is saved yet.').waitFor();
    expect(complaints).toEqual([]);
  });

  it('says so when there is no room left, and keeps again once there is', async () => {
    const { page } = await visit();
    await page.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
        if ((window as { full?: boolean }).full) throw new DOMException('no room', 'QuotaExceededError');
        return put.apply(this, given);
      };
    });
    await openDesk(page);
    await page.evaluate(() => void ((window as { full?: boolean }).full = true));
    await script(page).fill(REEF);
    await page.locator('[data-kept="full"]').waitFor();
    expect(await page.getByText('There is no room left in this browser').isVisible()).toBe(true);
    await page.evaluate(() => void ((window as { full?: boolean }).full = false));
    await script(page).fill(`${REEF}# more`);
    await restored(page);
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(`${REEF}# more`);
  });

  it('loses neither dive when two windows work on the desk at once', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    const other = await page.context().newPage();
    await openDesk(other);
    expect(await script(other).inputValue()).toBe(REEF);
    await script(other).fill(`# The other window\n${REEF}`);
    await page.getByText('The desk was changed in another window too.').waitFor();
    expect(await script(page).inputValue()).toBe(REEF);
    await script(page).fill(`# The first window\n${REEF}`);
    await page.getByText('What was on it there is among the saved dives.').waitFor();
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByRole('button', { name: 'Open The other window (left on the desk)' }).waitFor();
    await other.reload();
    await restored(other);
    expect(await script(other).inputValue(), 'each window finds its own dive').toBe(`# The other window\n${REEF}`);
  });
});

describe('a dive that is being steered', () => {
  it('is not lost with its window: it is steered on from where it was', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await page.getByRole('button', { name: 'Steer by hand' }).click();
    await page.getByRole('slider', { name: /^Lever/ }).waitFor();
    const moment = page.getByRole('slider', { name: 'Moment of the run' });
    await page.keyboard.press('PageDown');
    await expect.poll(async () => Number(await moment.inputValue()), { timeout: 30_000 }).toBeGreaterThan(20);
    await page.keyboard.press('Space');
    const left = Number(await moment.inputValue());
    await page.reload();
    await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
    await page.getByRole('slider', { name: /^Lever/ }).waitFor();
    expect(Number(await moment.inputValue())).toBeGreaterThanOrEqual(left);
    expect(await script(page).inputValue()).toBe(REEF);
    await page.getByRole('button', { name: 'Throw away' }).click();
    await page.getByRole('button', { name: 'Take it up again' }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect
      .poll(() => script(page).inputValue())
      .toMatch(/^# Steered to [\d.]+ m, 1 min\n[^]*# steered by hand\ndescend to/);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    expect(await script(page).inputValue()).toBe(REEF);
  });
});

describe('saved dives', () => {
  it('are saved, opened, renamed, deleted and brought back', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    expect(await page.getByRole('textbox', { name: 'Save this dive as' }).inputValue()).toBe(
      'A reef at eighteen metres',
    );
    await saveAs(page, 'Reef');
    await page.getByRole('combobox', { name: 'Ready dives' }).selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Open Reef' }).click();
    expect(await script(page).inputValue()).toBe(REEF.replace('A reef at eighteen metres', 'Reef'));
    await page.getByRole('button', { name: 'Rename Reef' }).click();
    await page.getByRole('textbox', { name: 'New name' }).fill('Reef, Tuesday');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Delete Reef, Tuesday' }).click();
    await page.getByText('Nothing is saved yet.').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await page.getByRole('button', { name: 'Open Reef, Tuesday' }).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('go out as one file with the caution in it, and come in again on another machine, with what was left out told', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await saveAs(page, 'Reef');
    await saveAs(page, 'Reef again');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export all as one file' }).click(),
    ]);
    const file = JSON.parse(await readFile(await download.path(), 'utf8')) as { caution: string; dives: unknown[] };
    expect(file.caution).toBe(cautions.general);
    expect(file.dives).toHaveLength(2);

    const { page: elsewhere } = await visit();
    await openDesk(elsewhere);
    await elsewhere.getByRole('button', { name: 'Saved dives' }).click();
    const bring = async (dives: unknown[]) =>
      elsewhere.getByLabel('Bring in a file of saved dives').setInputFiles({
        name: 'dives.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify({ ...file, dives })),
      });
    await bring([...file.dives, { id: 'x', title: 'No script' }]);
    await elsewhere.getByText('2 dives brought in.').waitFor();
    expect(await elsewhere.getByText('Record 3 left out: “script” is missing.', { exact: true }).isVisible()).toBe(
      true,
    );
    await bring(file.dives);
    await elsewhere.getByText('2 dives left out: the same is here already.').waitFor();
    await elsewhere.getByRole('button', { name: 'Open Reef', exact: true }).click();
    expect(await script(elsewhere).inputValue()).toBe(REEF.replace('A reef at eighteen metres', 'Reef'));
  });

  it('say what is wrong with a file that is not one of theirs', async () => {
    const { page } = await visit();
    await openDesk(page);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page
      .getByLabel('Bring in a file of saved dives')
      .setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{"dives":') });
    await page.getByText(/The file is not sound JSON/).waitFor();
  });
});
