// @module-tag in-turn
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { preferencesKey } from '@/app/parts/theme';
import { deskWithReef, openDesk, REEF, restored, script } from './kept-desk';
import { doneIn, expectRun, kept, openBench, openLesson, PROGRESS, run, said, SHEET, write } from './kept-sheets';
import { blockStorage, fillStorage, movableClock, putRecords, setFull, withoutDatabase } from './spoilt-storage';
import { browserVisits } from './visit';

const visit = browserVisits();

const HOUR_MS = 3_600_000;
const YEAR_MS = 365 * 24 * HOUR_MS;

describe('where nothing may be kept', () => {
  it('the bench, a lesson and the workshop work on, and say that and how to keep what was done', async () => {
    const { page, complaints } = await visit();
    await blockStorage(page.context());
    await openBench(page);
    await write(page, 'one');
    await said(page, 'so this sheet lasts until the page is closed. Print it or export it as CSV');
    await write(page, 'two');
    await openLesson(page);
    await page.getByRole('button', { name: 'Go on' }).click();
    await said(page, 'so what you do in lessons lasts until the page is closed. Print your results');
    await page.goto(workshopPath, { waitUntil: 'load' });
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page
      .getByText('so your lesson lasts until the page is closed. Go on working, and export it as a file')
      .waitFor();
    await page.getByRole('textbox', { name: 'Title' }).fill('Still here');
    for (const { path } of [routes.gases, routes.curves, routes.bring]) {
      await page.goto(path);
      expect((await page.locator('main').innerText()).length, path).toBeGreaterThan(50);
    }
    expect(complaints).toEqual([]);
  });

  it('without a database, the desk keeps its dive in the small storage', async () => {
    const { page, complaints } = await visit();
    await withoutDatabase(page);
    await openDesk(page);
    await script(page).fill(REEF);
    await page.waitForFunction(() =>
      localStorage.getItem('halftime.desk.records')?.includes('A reef at eighteen metres'),
    );
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(REEF);
    expect(complaints).toEqual([]);
  });
});

describe('where there is no room left', () => {
  it('the bench and a lesson say so once, and keep all of it as soon as there is', async () => {
    const { page } = await visit();
    await fillStorage(page);
    await openBench(page);
    await setFull(page, true);
    await write(page, 'one');
    await said(page, 'There is no room left in this browser to keep this sheet');
    await page.getByRole('button', { name: 'Put this message away' }).click();
    await write(page, 'two');
    expect(await page.getByRole('status').getByText('There is no room left').count()).toBe(0);
    await setFull(page, false);
    await write(page, 'three');
    await page.reload();
    await expectRun(page, run('three'));

    await openLesson(page);
    await setFull(page, true);
    await page.getByRole('button', { name: 'Go on' }).click();
    await said(page, 'There is no room left in this browser to keep what you do in lessons');
    await setFull(page, false);
    await page.getByLabel('Your answer').fill('12');
    await page.getByText('A guess').click();
    await page.getByRole('button', { name: 'Show what the model says' }).click();
    await page.waitForFunction((key) => localStorage.getItem(key)?.includes('a guess'), PROGRESS);
    expect(await doneIn(page), 'what was done while there was no room is kept too').toHaveLength(2);
  });

  it('without a database either, the desk says so and keeps again once there is', async () => {
    const { page } = await visit();
    await withoutDatabase(page);
    await fillStorage(page);
    await openDesk(page);
    await setFull(page, true);
    await script(page).fill(REEF);
    await page.locator('[data-kept="full"]').waitFor();
    await setFull(page, false);
    await script(page).fill(`${REEF}# more`);
    await restored(page);
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(`${REEF}# more`);
  });

  it('the workshop says so', async () => {
    const { page } = await visit();
    await fillStorage(page);
    await page.goto(workshopPath, { waitUntil: 'load' });
    await setFull(page, true);
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page
      .getByText('There is no room left in this browser to keep your lesson. Go on working, and export it as a file')
      .waitFor();
  });
});

describe('when the computer’s clock is put back', () => {
  it.each([['a year', YEAR_MS]])('by %s, the desk keeps the newest dive and every saved one', async (_, backMs) => {
    const { page } = await visit();
    const move = await movableClock(page);
    await deskWithReef(page);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page.getByRole('textbox', { name: 'Save this dive as' }).fill('Before');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('button', { name: 'Open Before' }).waitFor();
    await move(-backMs);
    await script(page).fill(`# After\n${REEF}`);
    await page.getByRole('textbox', { name: 'Save this dive as' }).fill('After');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('button', { name: 'Open After' }).waitFor();
    await page.reload();
    await restored(page);
    expect(await script(page).inputValue()).toBe(`# After\n${REEF}`);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    for (const name of ['Before', 'After'])
      await page.getByRole('button', { name: `Open ${name}`, exact: true }).waitFor();
  });

  it('a live run on the bench goes on from where it was, and says so', async () => {
    const { page, complaints } = await visit();
    const move = await movableClock(page);
    await openBench(page);
    await write(page, 'ten');
    const live = page.getByRole('region', { name: 'Run it against the clock' });
    await live.getByRole('button', { name: 'Start the clock' }).click();
    await page.waitForTimeout(1200);
    await move(-HOUR_MS);
    await live.getByText(/clock was put back by/).waitFor();
    await live.getByRole('button', { name: 'The gauge is at 10 m' }).click();
    await live.getByText('Hold 10 m on the gauge for 1:00.').waitFor();
    const marks = (JSON.parse((await kept(page, SHEET))!) as { sheet: { marks: number[] } }).sheet.marks;
    expect(marks[1]! - marks[0]!).toBeGreaterThan(1);
    expect(marks[1]! - marks[0]!).toBeLessThan(60);
    const runTime = async () => /^0:(\d\d)$/.exec((await live.locator('dd').first().textContent()) ?? '')?.[1];
    await expect.poll(async () => Number(await runTime()), { timeout: 15_000 }).toBeGreaterThan(5);
    const beforeS = Number(await runTime());
    await move(-YEAR_MS);
    await page.reload();
    await live.getByText('Hold 10 m on the gauge for 1:00.').waitFor();
    await live.getByText(/clock was put back by/).waitFor();
    expect(Number(await runTime()), 'the run stands where it stood').toBeGreaterThanOrEqual(beforeS);
    await move(2 * YEAR_MS);
    await live.getByRole('button', { name: /Go on|End the hold early/ }).click();
    await page.getByRole('group', { name: 'Unit 1 at ten' }).waitFor();
    expect(complaints).toEqual([]);
  });
});

const SPOILT: readonly (readonly [string, string])[] = [
  ['text that is no record', '{"sheet": {"script":'],
  [
    'a record of a newer version',
    JSON.stringify({ version: 7, sheet: { script: 'kept', future: true }, state: { progress: { kept: 1 } } }),
  ],
  ['a record with parts missing', JSON.stringify({ version: 1, sheet: { script: 'kept' }, state: {} })],
  ['a record of another kind', JSON.stringify([1, 2, { kept: ['__proto__'] }])],
  ['nothing', 'null'],
];

describe('a record that cannot be read', () => {
  it(
    'is set aside by the bench and by lessons, which begin anew, say so, and hand it over whole',
    { timeout: 120_000 },
    async () => {
      const { page, complaints } = await visit();
      await page.goto(routes.licences.path);
      for (const [index, [what, text]] of SPOILT.entries()) {
        await page.evaluate(([names, record]) => names.forEach((name) => localStorage.setItem(name, record)), [
          [SHEET, PROGRESS],
          text,
        ] as const);
        await openBench(page);
        await said(
          page,
          'What was kept of your last sheet can’t be read here, so a fresh one is shown. It is set aside, not lost.',
        );
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.getByRole('button', { name: 'Save it as a file' }).click(),
        ]);
        expect(JSON.parse(await readFile(await download.path(), 'utf8')), what).toEqual({
          caution: cautions.general,
          record: text,
        });
        await write(page, 'new');
        expect(await kept(page, `${SHEET}.aside-${index + 1}`), what).toBe(text);
        await openLesson(page);
        await said(
          page,
          'What was kept of your lessons can’t be read here, so they begin anew. It is set aside, not lost.',
        );
        await page.getByRole('button', { name: 'Go on' }).click();
        expect(await kept(page, `${PROGRESS}.aside-${index + 1}`), what).toBe(text);
        await expect.poll(() => doneIn(page)).toHaveLength(1);
      }
      await page.reload();
      await page.getByRole('button', { name: 'Go on' }).waitFor();
      expect(await page.getByText('can’t be read here').count(), 'it is told once').toBe(0);
      expect(complaints).toEqual([]);
    },
  );

  it('of every other kind the app keeps breaks no screen', async () => {
    const { page, complaints } = await visit();
    await deskWithReef(page);
    for (const [, text] of SPOILT.slice(0, 3)) {
      await page.evaluate(
        ([keys, record]) => {
          for (const key of keys) localStorage.setItem(key, record);
          for (const key of ['halftime:hand-over', 'halftime.desk.visit']) sessionStorage.setItem(key, record);
        },
        [[preferencesKey, 'halftime.desk.last', 'halftime.desk.records'], text] as const,
      );
      await openDesk(page);
      expect(await script(page).inputValue()).toBe(REEF);
    }
    expect(complaints).toEqual([]);
  });

  it('among the saved dives or lessons stays there, is told of and goes along when all are exported', async () => {
    const { page } = await visit();
    await deskWithReef(page);
    await putRecords(page, {
      'dive/a': { id: 'a', title: 17 },
      'dive/b': 'garbage',
      'dive/c': { version: 9, id: 'c', title: 'Sound', script: REEF, future: { kept: true } },
      'lesson:x': { version: 9, text: 'kept' },
    });
    await page.reload();
    await restored(page);
    await page.getByRole('button', { name: 'Saved dives' }).click();
    await page
      .getByText('2 records can’t be read by this version. They are kept, and go along when you export all.')
      .waitFor();
    await page.getByRole('button', { name: 'Open Sound' }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export all as one file' }).click(),
    ]);
    const { dives } = JSON.parse(await readFile(await download.path(), 'utf8')) as { dives: unknown[] };
    expect(dives).toEqual(
      expect.arrayContaining([{ id: 'a', title: 17 }, 'garbage', expect.objectContaining({ future: { kept: true } })]),
    );
    await page.goto(workshopPath, { waitUntil: 'load' });
    await page
      .getByText('One lesson kept here can’t be read by this version. What was kept stays where it is.')
      .waitFor();
    const [lessons] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save it as a file' }).click(),
    ]);
    expect(JSON.parse(await readFile(await lessons.path(), 'utf8'))).toEqual({
      caution: cautions.general,
      records: [{ version: 9, text: 'kept' }],
    });
  });
});
