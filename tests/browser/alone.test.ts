// @module-tag in-turn
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { embedPath, routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { scenarios } from '@/content/scenarios/scenarios';
import { cutOff, MOST_BYTES, ran, ready } from './alone';
import { plateFaults } from './plate-faults';
import { linkTo, openDesk, openTools, restored, script } from './kept-desk';
import { accessibilityFaults, browserVisits, sidewaysPx } from './visit';

const visit = browserVisits();

/** Two dives, two units, a second dive over the first, and remarks that would run if they could. */
const WALL = `# Along the wall </title></pre></script><script>window.ran = true</script>
gas: air
setup: Rented, gas 32%
# <img src="x" onerror="window.ran = true">
descend to 34 m at 18 m/min
stay 12 min
ascend to 25 m at 9 m/min
stay 20 min
ascend to surface at 12 m/min
`;
const TITLE = 'Along the wall </title></pre></script><script>window.ran = true</script>';
const AT_S = '1500';
/** The ready dive that is laid over it. */
const SECOND = scenarios[1]!.title;

/** The readings in a page, by name: figure, unit and the line under it. */
const readings = (page: Page) =>
  page
    .getByRole('region', { name: 'Readings' })
    .locator('> *')
    .evaluateAll((tiles) => tiles.map((tile) => tile.textContent));

/** What the two pictures say of the dive, the one laid over it, and the cursor’s moment. */
async function sentences(page: Page) {
  const said = (picture: string) =>
    page.getByRole('figure', { name: picture, exact: true }).locator('figcaption p').first().textContent();
  return { dive: await said('The dive'), chase: await said('The chase') };
}

/** What the desk said when the page was saved from it. */
let saved: {
  file: string;
  readings: readonly (string | null)[];
  sentences: Record<'dive' | 'chase', string | null>;
  link: string;
};

async function saveFromDesk(page: Page) {
  await openDesk(page);
  await script(page).fill(WALL);
  await page.getByRole('button', { name: 'Cover Ceiling' }).click();
  await openTools(page, 'The dive');
  await page.getByLabel('Second dive').selectOption({ label: SECOND });
  await page.keyboard.press('Escape');
  await page.getByRole('slider', { name: 'Time cursor' }).fill(AT_S);
  const link = await linkTo(page);
  await page.getByRole('button', { name: 'Pass on' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the dive as a page of its own' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^halftime-along-the-wall.*\.html$/);
  const file = `${await download.path()}.html`;
  await writeFile(file, await readFile(await download.path()));
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  saved = { file, readings: await readings(page), sentences: await sentences(page), link };
}

describe('a dive saved from the desk as a page of its own', () => {
  it(
    'shows offline, from a file, what the desk showed to the last digit, and asks for nothing',
    { tags: 'every-run' },
    async () => {
      const desk = await visit();
      await saveFromDesk(desk.page);
      expect(desk.complaints).toEqual([]);
      expect((await stat(saved.file)).size).toBeLessThanOrEqual(MOST_BYTES);

      const { page, complaints, wrong } = await cutOff(visit);
      await page.goto(pathToFileURL(saved.file).href);
      await ready(page);
      expect(await page.title()).toBe(`${TITLE} · Halftime`);
      expect(await page.getByText(cautions.general).first().isVisible()).toBe(true);
      expect(await readings(page)).toEqual(saved.readings);
      expect(await sentences(page)).toEqual(saved.sentences);
      expect(saved.sentences.dive).toContain(`${SECOND}, dashed: `);
      expect(await page.getByRole('figure', { name: 'Units side by side' }).textContent()).toContain('Rented');

      // What is covered stays so until it is asked for.
      expect(await page.getByText('Covered', { exact: true }).count()).toBe(1);
      await page.getByRole('button', { name: 'Uncover Ceiling' }).click();
      expect(await page.getByText('Covered', { exact: true }).count()).toBe(0);

      // Why, in words.
      await page.getByRole('button', { name: 'Why this required stop?' }).first().click();
      const why = page.getByRole('dialog', { name: /^Why\?/ });
      await why.getByRole('listitem').first().waitFor();
      expect(await why.getByRole('listitem').count()).toBeGreaterThan(3);
      expect(await why.getByText(cautions.general).last().isVisible()).toBe(true);
      await page.keyboard.press('Escape');

      await page.getByRole('slider', { name: 'Time cursor' }).fill('60');
      expect(await readings(page)).not.toEqual(saved.readings);
      await page.getByRole('radio', { name: 'Imperial' }).check({ force: true });
      expect((await readings(page))[0]).toContain('ft');
      await page.getByText('The script of this dive').click();
      expect(await page.locator('details pre, pre').last().textContent()).toBe(WALL);
      // At the foot of the page, where the hand on time lies over nothing.
      const toFoot = () => page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
      await toFoot();
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
      await toFoot();
      expect(await accessibilityFaults(page)).toEqual([]);
      for (const width of [320, 820, 1440]) {
        await page.setViewportSize({ width, height: 800 });
        expect(await sidewaysPx(page), `${width} px wide`).toBeLessThanOrEqual(0);
        await expect.poll(() => plateFaults(page), { message: `words of pictures, ${width} px wide` }).toEqual([]);
        const cut = await page
          .locator('[data-strip] [data-reading] > :is(span:first-child, p + p)')
          .evaluateAll((words) =>
            words
              .filter((one) => one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 1)
              .map(({ textContent }) => textContent),
          );
        expect(cut, `cut at ${width} px`).toEqual([]);
      }
      // On paper with the script, though it be folded on the screen.
      await page.getByText('The script of this dive').click();
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByText(cautions.general).first().isVisible()).toBe(true);
      expect(await page.evaluate(() => document.body.innerText)).toContain('stay 20 min\nascend to surface');
      expect(await ran(page)).toBeUndefined();
      expect(wrong).toEqual([]);
      expect(complaints).toEqual([]);
    },
  );

  it('says so where the dive in it was changed, and runs nothing where its code was', async () => {
    const whole = await readFile(saved.file, 'utf8');
    const spoilt = `${saved.file}.spoilt.html`;
    await writeFile(
      spoilt,
      whole.replace(
        /(id="halftime-dive">1\..{30})(.)/,
        (_, before: string, one: string) => before + (one === 'A' ? 'B' : 'A'),
      ),
    );
    const { page } = await cutOff(visit);
    await page.goto(pathToFileURL(spoilt).href);
    await page.getByText('The dive in this file is not as it was saved').waitFor();
    expect(await page.getByText(cautions.general).isVisible()).toBe(true);

    await writeFile(spoilt, whole.replace(/(<script>globalThis)/, '<script>window.ran=true;globalThis'));
    await page.goto(pathToFileURL(spoilt).href);
    await page.getByText('the file is not as it was saved').waitFor();
    expect(await page.getByText(cautions.general).isVisible()).toBe(true);
    expect(await page.locator('pre').textContent()).toBe(WALL);
    expect(await ran(page)).toBeUndefined();
  });

  it('opens again as the desk it was, dropped there or on “Bring a dive”', async () => {
    const { page, complaints } = await visit();
    await page.goto(routes.bring.path);
    await page.locator('input[type="file"]').setInputFiles(saved.file);
    await page.waitForURL(`**${routes.desk.path}*`);
    await restored(page);
    await page.getByText(/^Opened “Along the wall/).waitFor();
    expect(await readings(page)).toEqual(saved.readings);
    expect(await linkTo(page)).toBe(saved.link);

    const elsewhere = (await visit()).page;
    await openDesk(elsewhere);
    await elsewhere.evaluate(
      (text) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([text], 'dive.html', { type: 'text/html' }));
        document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
      },
      await readFile(saved.file, 'utf8'),
    );
    await elsewhere.getByText(/^Opened “Along the wall/).waitFor();
    expect(await readings(elsewhere)).toEqual(saved.readings);
    expect(await linkTo(elsewhere)).toBe(saved.link);
    expect(complaints).toEqual([]);
  });
});

describe('a dive in a course page', () => {
  let course: ReturnType<typeof createServer>;
  let address: string;
  /** What the course’s page frames, by the path it is asked for. */
  const framed: Record<string, string> = {};
  beforeAll(async () => {
    course = createServer(({ url = '' }, response) => {
      response.setHeader('content-type', 'text/html');
      response.end(`<!doctype html><title>A course</title><h1>Course</h1>${framed[url] ?? ''}`);
    });
    await new Promise<void>((listening) => course.listen(0, '127.0.0.1', listening));
    address = `http://127.0.0.1:${(course.address() as AddressInfo).port}`;
  });
  afterAll(() => void course.close());

  it('shows in a frame of another origin by the line that is copied, and keeps nothing there', async () => {
    const desk = (await visit()).page;
    await openDesk(desk);
    await script(desk).fill(WALL);
    await desk.getByRole('slider', { name: 'Time cursor' }).fill(AT_S);
    await desk.getByRole('button', { name: 'Pass on' }).click();
    framed['/lesson'] = await desk.getByRole('textbox', { name: 'Line for a frame' }).inputValue();
    await desk.getByRole('button', { name: 'Close', exact: true }).click();
    const shown = await readings(desk);

    const { page, complaints } = await visit();
    await page.goto(`${address}/lesson`);
    const frame = page.locator('iframe').contentFrame();
    await frame.locator('html[data-ready]').waitFor({ state: 'attached' });
    expect(
      await frame
        .getByRole('region', { name: 'Readings' })
        .locator('> *')
        .evaluateAll((tiles) => tiles.map((tile) => tile.textContent)),
    ).toEqual(shown);
    expect(await frame.getByText(cautions.general).first().isVisible()).toBe(true);
    // As wide as the course’s page and within its window, with the hand on time in sight, on a phone too.
    for (const [width, height] of [
      [390, 844],
      [1440, 900],
    ] as const) {
      await page.setViewportSize({ width, height });
      const box = (await page.locator('iframe').boundingBox())!;
      expect(box.width).toBeGreaterThan(width - 20);
      expect(box.height).toBeLessThan(height);
      const slider = (await frame.getByRole('slider', { name: 'Time cursor' }).boundingBox())!;
      expect(slider.y + slider.height).toBeLessThan(box.y + box.height);
      expect(await frame.locator('html').evaluate((html) => html.scrollWidth - html.clientWidth)).toBeLessThanOrEqual(
        0,
      );
    }
    await frame.getByRole('radio', { name: 'Dark' }).check({ force: true });
    expect(
      await frame.locator('html').evaluate(() => [localStorage.length, sessionStorage.length, document.cookie]),
    ).toEqual([0, 0, '']);
    const [opened] = await Promise.all([
      page.waitForEvent('popup'),
      frame.getByRole('link', { name: 'Open in Halftime' }).click(),
    ]);
    await opened.getByText(/^Opened “Along the wall/).waitFor();
    expect(await ran(page)).toBeUndefined();
    expect(complaints).toEqual([]);
  });

  it('is the only page that may be framed', { tags: 'every-run' }, async () => {
    framed['/desk'] = `<iframe src="${inject('siteAddress')}${routes.desk.path}"></iframe>`;
    const { page } = await visit();
    await page.goto(`${address}/desk`);
    await page.waitForTimeout(500);
    expect(
      await page
        .frames()[1]
        ?.getByText(cautions.general)
        .count()
        .catch(() => 0),
    ).toBe(0);
    for (const path of [routes.home.path, routes.desk.path, routes.bring.path])
      expect((await fetch(inject('siteAddress') + path)).headers.get('content-security-policy')).toBe(
        "frame-ancestors 'none'",
      );
    expect((await fetch(inject('siteAddress') + embedPath)).headers.get('content-security-policy')).toBeNull();
  });

  it('says what is wrong with an address that carries no dive', async () => {
    const { page } = await visit();
    await page.goto(embedPath);
    await page.getByText('The link carries no dive.').waitFor();
    expect(await page.getByText(cautions.general).isVisible()).toBe(true);
    expect(await accessibilityFaults(page)).toEqual([]);
  });
});
