// @module-tag in-turn
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { cautions } from '@/content/cautions';
import { decodeStep, encodeStep } from '@/lib/files/links/step-link';
import { cutOff, MOST_BYTES, ran, ready } from './alone';
import { accessibilityFaults, arrive, browserVisits, sidewaysPx } from './visit';
import { valueOf } from '../unit/read';

const visit = browserVisits();

const SLUG = '06-stop-or-ceiling';
const TITLE = 'Left out';
const WRONG = 'It sounds the alarm and locks.';
const RIGHT = 'It notes that the stop was left out, and asks for nothing.';
/** What only the answer tells. */
const TOLD = 'It was advice. There is nothing to make up for';
const RUN = 'See the debt paid';

/** The page as it was saved from the lesson, and the line for a frame. */
let saved: { file: string; whole: string; line: string };

/** Opens what passes a question on, from the tools of its lesson. */
async function asPage(page: Page) {
  await arrive(page, lessonPath(SLUG, 'left-out'));
  await page.getByRole('button', { name: 'Tools of this lesson' }).click();
  await page.getByRole('button', { name: 'This question as a page of its own' }).click();
  const dialog = page.getByRole('dialog', { name: 'This question as a page of its own' });
  await dialog.getByRole('button', { name: 'Save the question as a page of its own' }).waitFor();
  return dialog;
}

/** The readings whose words do not fit their tile. */
const cutTiles = (page: Page) =>
  page
    .locator('[data-strip] [data-reading]')
    .evaluateAll((tiles) =>
      tiles.filter((tile) => tile.scrollHeight > tile.clientHeight + 1).map(({ textContent }) => textContent),
    );

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Answers by key alone. */
async function answer(page: Page, option: string) {
  await page.getByRole('radio', { name: option }).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Boats wait for nobody.');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByText('You said: a guess').waitFor();
}

async function handedIn(page: Page): Promise<string> {
  await press(page, 'Hand in');
  const dialog = page.getByRole('dialog', { name: 'Hand in' });
  await dialog.getByRole('textbox', { name: 'Your name, if you wish' }).fill('Ada');
  const link = await dialog.getByRole('textbox', { name: 'Link' }).inputValue();
  expect(await dialog.getByRole('img').count(), 'a code to photograph').toBe(1);
  return link;
}

describe('a question saved from its lesson as a page of its own', () => {
  it('is answered offline, seen, read, run and handed in, and asks for nothing', { tags: 'every-run' }, async () => {
    const lesson = await visit();
    const dialog = await asPage(lesson.page);
    expect(await dialog.getByText(cautions.general).isVisible()).toBe(true);
    expect(await accessibilityFaults(lesson.page)).toEqual([]);
    const [download] = await Promise.all([
      lesson.page.waitForEvent('download'),
      dialog.getByRole('button', { name: 'Save the question as a page of its own' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('halftime-left-out.html');
    const file = `${await download.path()}.html`;
    const whole = await readFile(await download.path(), 'utf8');
    await writeFile(file, whole);
    saved = { file, whole, line: await dialog.getByRole('textbox', { name: 'Line for a frame' }).inputValue() };
    expect((await stat(file)).size).toBeLessThanOrEqual(MOST_BYTES);
    // To be read without scripts: the question, and not what answers it.
    expect(whole).toContain('What does the unit do?');
    expect(whole).not.toContain('nothing to make up for');
    expect(lesson.complaints).toEqual([]);

    const { page, complaints, wrong } = await cutOff(visit);
    await page.goto(pathToFileURL(file).href);
    await ready(page);
    expect(await page.title()).toBe(`${TITLE} · Halftime`);
    const caution = page.getByText(cautions.general).first();
    expect(await caution.isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.outerHTML)).not.toContain('nothing to make up for');
    // The run is there to look forward to, and shows nothing yet.
    expect(await page.getByRole('button', { name: 'Play' }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Hand in' }).count()).toBe(0);
    await press(page, 'Show what the model says');
    await page.getByText('Answer the question first.').waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);

    await answer(page, WRONG);
    await page.getByText('The model says something else.').waitFor();
    expect(await page.getByText(TOLD).isVisible()).toBe(true);
    await press(page, 'Answer it again');
    await answer(page, RIGHT);
    await page.getByText('That is what the model says.').waitFor();

    // Play the run to where it waits first.
    await page.getByRole('heading', { name: RUN }).waitFor();
    await press(page, 'Next moment');
    expect(await page.getByRole('slider', { name: 'Time cursor' }).inputValue()).not.toBe('0');
    const depth = page.getByRole('region', { name: 'Readings' }).locator('> *').first();
    expect(await depth.textContent()).toContain('m');
    await page.getByRole('radio', { name: 'Imperial' }).check({ force: true });
    expect(await page.getByRole('main').innerText()).toContain('ft');
    await page.getByRole('radio', { name: 'Metric' }).check({ force: true });
    await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
    expect(await accessibilityFaults(page)).toEqual([]);
    for (const width of [320, 820, 1440]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await sidewaysPx(page), `${width} px wide`).toBeLessThanOrEqual(0);
      if (width === 320) expect(await cutTiles(page)).toEqual([]);
    }
    const link = await handedIn(page);
    expect(link).toMatch(/^http.*\/lessons\/results\/#answers-1\./);
    const [paper] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    await press(page, 'Close');
    await page.getByRole('slider', { name: 'Time cursor' }).fill('0');
    await page.emulateMedia({ media: 'print' });
    expect(await cutTiles(page)).toEqual([]);
    // What the unit tells goes to paper to its end.
    const log = page.locator('[data-picture="log"]');
    expect(await log.getByText('At 36:00 you surfaced').count()).toBe(1);
    expect(
      await log
        .locator('xpath=self::*|ol')
        .evaluateAll((boxes) => boxes.map((box) => box.scrollHeight - box.clientHeight)),
    ).toEqual([0, 0]);
    for (const words of [cautions.general, cautions.unknown, TOLD])
      expect(await page.evaluate(() => document.body.innerText)).toContain(words);
    expect(wrong).toEqual([]);
    expect(complaints).toEqual([]);

    // Whoever teaches opens both, and reads the first answer with the later one.
    const teacher = await visit();
    await arrive(teacher.page, link);
    await teacher.page.getByText('1 paper open.').waitFor();
    const question = teacher.page.getByRole('region', { name: TITLE });
    await question.getByText('1 of 1 answered, 0 of them right at first; 1 right with their last answer.').waitFor();
    expect(await question.getByText(`≠ ${WRONG.slice(0, -1)}`).count()).toBe(1);
    await teacher.page.locator('input[type="file"]').setInputFiles(await paper.path());
    // The same paper twice is one.
    await teacher.page.getByText('1 paper open.').waitFor();
  });

  it('says so where the question in it was changed, and runs nothing that was put into it', async () => {
    const spoil = async (change: (whole: string) => string) => {
      const spoilt = `${saved.file}.spoilt.html`;
      await writeFile(spoilt, change(saved.whole));
      const { page, wrong } = await cutOff(visit);
      await page.goto(pathToFileURL(spoilt).href);
      return { page, wrong };
    };
    const cut = await spoil((whole) =>
      whole.replace(
        /(id="halftime-dive">step-1\..{30})(.)/,
        (_, before: string, one: string) => before + (one === 'A' ? 'B' : 'A'),
      ),
    );
    await cut.page.getByText('The question in this page is not as it was saved').waitFor();
    expect(await cut.page.getByText(cautions.general).isVisible()).toBe(true);
    expect(await accessibilityFaults(cut.page)).toEqual([]);

    // Made by someone who knows how: titles, texts and what they were set to would run if they could.
    const HOSTILE = '<img src="x" onerror="window.ran = true"><script>window.ran = true</script>';
    const carried = /id="halftime-dive">([^<]*)</.exec(saved.whole)![1]!;
    const read = valueOf(decodeStep(carried));
    const { lesson, set } = read;
    const forged = (title: string) => {
      const made = valueOf(
        encodeStep({
          ...read,
          lesson: {
            ...lesson,
            title,
            steps: lesson.steps.map((step) => ({ ...step, title: `B ${HOSTILE}`.slice(0, 90) })),
          },
          set: Object.fromEntries(Object.entries(set).map(([key, html]) => [key, HOSTILE + html])),
        }),
      );
      return (whole: string) => whole.replace(carried, made);
    };
    const { page, wrong } = await spoil(forged('A </title><script>window.ran = true</script>'));
    await ready(page);
    await answer(page, RIGHT);
    await page
      .getByRole('heading', { name: /^B <img/ })
      .first()
      .waitFor();
    expect(await page.getByRole('main').locator('img, script').count()).toBe(0);
    expect(await ran(page)).toBeUndefined();
    expect(wrong).toEqual([]);
  });
});

describe('a question in a course page', () => {
  let course: ReturnType<typeof createServer>;
  beforeAll(async () => {
    course = createServer((_, response) => {
      response.setHeader('content-type', 'text/html');
      response.end(`<!doctype html><title>A course</title><h1>Course</h1>${saved.line}`);
    });
    await new Promise<void>((listening) => course.listen(0, '127.0.0.1', listening));
  });
  afterAll(() => void course.close());

  it('is answered in a frame of another origin by the line that is copied, keeps nothing, and is handed in', async () => {
    const { page, complaints } = await visit();
    await page.goto(`http://127.0.0.1:${(course.address() as AddressInfo).port}/`);
    const frame = page.locator('iframe').contentFrame();
    await frame.locator('html[data-ready]').waitFor({ state: 'attached' });
    expect(await frame.getByText(cautions.general).first().isVisible()).toBe(true);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await frame.locator('html').evaluate((html) => html.scrollWidth - html.clientWidth)).toBeLessThanOrEqual(0);
    await frame.getByRole('button', { name: 'Look without answering' }).click();
    await frame.getByText('You looked without answering.').waitFor();
    await frame.getByRole('button', { name: 'Answer it all the same' }).click();
    await frame.getByText(RIGHT).click();
    await frame.getByText('A guess').click();
    await frame.getByRole('button', { name: 'Show what the model says' }).click();
    await frame.getByText('That is what the model says.').waitFor();
    await frame.getByRole('button', { name: 'Hand in' }).click();
    const link = await frame.getByRole('textbox', { name: 'Link' }).inputValue();
    await frame.getByRole('button', { name: 'Close' }).click();
    expect(
      await frame.locator('html').evaluate(() => [localStorage.length, sessionStorage.length, document.cookie]),
    ).toEqual([0, 0, '']);
    const [opened] = await Promise.all([
      page.waitForEvent('popup'),
      frame.getByRole('link', { name: 'Open in Halftime' }).click(),
    ]);
    await opened.getByRole('heading', { name: TITLE }).waitFor();
    expect(new URL(opened.url()).pathname).toBe(lessonPath(SLUG));
    await arrive(opened, link);
    await opened.getByText('1 looked before answering.').waitFor();
    expect(complaints).toEqual([]);
  });
});
