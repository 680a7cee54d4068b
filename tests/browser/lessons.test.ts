// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { glossaryPath, keyPath, lessonPath, sheetPath, textPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { accessibilityFaults, arrive, browserVisits, sidewaysPx } from './visit';
import { valueOf } from '../unit/read';

const visit = browserVisits();

const SLUG = '04-no-stop-time';

/** Presses Tab until the focus is on what is asked for; the page is never touched otherwise. */
async function tabTo(page: Page, name: string | RegExp, backwards = false): Promise<void> {
  const matches = (found: string) => (typeof name === 'string' ? found === name : name.test(found));
  for (let i = 0; i < 250; i += 1) {
    await page.keyboard.press(backwards ? 'Shift+Tab' : 'Tab');
    const found = await page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement)) return '';
      const labelled =
        element instanceof HTMLInputElement ||
        element instanceof HTMLTextAreaElement ||
        element instanceof HTMLSelectElement
          ? (element.labels?.[0]?.textContent ?? '')
          : '';
      return (element.getAttribute('aria-label') ?? (labelled || element.textContent) ?? '')
        .replace(/\s+/g, ' ')
        .trim();
    });
    if (matches(found)) return;
  }
  throw new Error(`no amount of Tab reaches ${String(name)}`);
}

async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

async function goOn(page: Page, heading: string): Promise<void> {
  await press(page, /^(Go on|To your results)$/);
  await page.getByRole('heading', { name: heading }).waitFor();
}

/** Calls the answer a guess and asks for the truth. */
async function guess(page: Page): Promise<void> {
  await tabTo(page, /^(A guess|Fairly sure|Sure)$/);
  await page.keyboard.press('Space');
  await press(page, 'Show what the model says');
  await page.getByText('You said: a guess').waitFor();
}

/** What is read on the page, amounts with plain spaces. */
const textOf = async (page: Page) => (await page.locator('main').innerText()).replaceAll('\u00a0', ' ');

const openAt = async (page: Page, step?: string) => {
  await arrive(page, lessonPath(SLUG, step));
};

describe('a lesson in a browser', () => {
  it(
    'is taken from the first step to the results by keyboard alone',
    { tags: 'every-run', timeout: 180_000 },
    async () => {
      const { page, complaints } = await visit();
      await openAt(page);
      await goOn(page, 'How long at thirty metres?');
      await tabTo(page, 'Your answer');
      await page.keyboard.type('20');
      await guess(page);
      await page.getByText(/Around 20 min and more is what older tables give/).waitFor();

      await goOn(page, 'Draw how it falls');
      for (const value of ['60', '9', '4', '0', '0']) {
        await tabTo(page, /^at \d+:\d\d$/);
        await page.keyboard.type(value);
      }
      await guess(page);
      await page.getByText(/^(Your curve|You drew it)/).waitFor();

      await goOn(page, 'See it happen');
      await page.getByRole('button', { name: 'Next moment' }).waitFor();
      await press(page, 'Next moment');
      await page.keyboard.press('Enter');
      await page.getByText(/You are down\. Compartment 1 leads/).waitFor();

      await goOn(page, 'Shallower, who leads?');
      await tabTo(page, /^(Compartment 1 again|One a little slower)/);
      await page.keyboard.press('ArrowDown');
      await guess(page);

      await goOn(page, 'Open the number');
      await page.getByRole('heading', { name: /^Why\? No-stop time, at 5:00/ }).waitFor();
      await goOn(page, 'What happens to it on the way up?');
      await tabTo(page, /^It (keeps|grows|stays)/);
      await page.keyboard.press('Space');
      await guess(page);

      await goOn(page, 'Stay inside it');
      await page.getByText(/things are still missing/).waitFor();
      await tabTo(page, 'Dive script');
      await page.keyboard.press('Control+A');
      await page.keyboard.insertText(
        'gas: air\ngradient factors: 85/85\ndescend to 30 m at 18 m/min\nstay 10 min 30 s\nascend to 5 m at 9 m/min\nstay 3 min\nascend to surface at 9 m/min\n',
      );
      await page.getByText('You have done it.').waitFor();

      await goOn(page, 'Check yourself');
      await page.getByRole('button', { name: 'Check' }).first().waitFor();
      await tabTo(page, /min$/);
      await page.keyboard.press('Space');
      await press(page, 'Check');
      await page.getByText(/[01] of 1 right so far/).waitFor();

      await goOn(page, 'What to take along');
      await goOn(page, 'Your results');
      const table = page.getByRole('table');
      await table.waitFor();
      expect(
        await table.getByRole('row', { name: /How long at thirty metres\? 20 min \(a guess\).*11 min/ }).count(),
      ).toBe(1);
      expect(await table.getByRole('row', { name: /Stay inside it.*goal met/ }).count()).toBe(1);
      expect(complaints).toEqual([]);
    },
  );

  it('takes a curve drawn with the pointer and lays the true one over it', async () => {
    const { page } = await visit({ viewport: { width: 1280, height: 900 } });
    await openAt(page, 'draw-the-fall');
    const paper = await page.locator('[class*=paper] svg').boundingBox();
    const at = (x: number, y: number) => [paper!.x + paper!.width * x, paper!.y + paper!.height * y] as const;
    await page.mouse.move(...at(0.09, 0.1));
    await page.mouse.down();
    for (let i = 0; i <= 20; i += 1) await page.mouse.move(...at(0.09 + (i / 20) * 0.9, 0.1 + (i / 20) * 0.78));
    await page.mouse.up();
    await page.getByText('A guess').click();
    await page.getByRole('button', { name: 'Show what the model says' }).click();
    await page.getByText(/You drew it too high most of the way/).waitFor();
    await page.getByText('You let it fall slowly from a high number').waitFor();
  });

  it('goes on where one was, after a reload', async () => {
    const { page } = await visit();
    await openAt(page);
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.getByLabel('Your answer').fill('12');
    await page.getByText('A guess').click();
    await page.getByRole('button', { name: 'Show what the model says' }).click();
    await arrive(page, lessonPath(SLUG));
    await page.getByText('That is what the model says.').waitFor();
    await arrive(page, routes.lessons.path);
    await page.getByText(/2 of 10 steps seen/).waitFor();
  });

  it('waits at its moments while it plays', async () => {
    const { page } = await visit();
    await openAt(page, 'watch-it');
    await page.getByRole('button', { name: 'Speed and moments' }).click();
    await page.getByRole('combobox', { name: 'Speed' }).selectOption('120');
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByText(/and they are falling fast/).waitFor();
    await page.getByRole('button', { name: 'Go on playing' }).waitFor();
    expect(await page.getByRole('slider', { name: 'Time cursor' }).getAttribute('aria-valuetext')).toBe('1:00, 18.0 m');
  });

  it.each([
    'what-it-promises',
    'on-arrival',
    'draw-the-fall',
    'watch-it',
    'open-the-number',
    'inside-the-time',
    'check',
    'recap',
  ])('has no fault that axe can find at the step %s, in a dim room, and fits a phone', async (step) => {
    const { page, complaints } = await visit({ preferences: { theme: 'dark' } });
    await openAt(page, step);
    await page.getByText('Setting up the dive…').waitFor({ state: 'detached' });
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await sidewaysPx(page)).toBe(0);
    // What is not the step takes no more than 120 px of a phone.
    expect(844 - (await page.locator('[data-part="step"]').boundingBox())!.height).toBeLessThanOrEqual(120);
    expect(complaints).toEqual([]);
  });
});

describe('a lesson on paper', () => {
  it('asks on the student’s sheet and answers on the key, in the reader’s units', async () => {
    const { page, complaints } = await visit({ preferences: { units: 'imperial' } });
    await arrive(page, sheetPath(SLUG));
    await page.emulateMedia({ media: 'print' });
    const sheet = await textOf(page);
    expect(sheet).toContain('For teaching and planning study only');
    expect(sheet).toContain('100 ft');
    expect(sheet).not.toContain('The model says');
    expect(sheet).not.toContain('30 m on air');
    await arrive(page, keyPath(SLUG));
    const key = await textOf(page);
    expect(key).toContain('The model says');
    expect(key).toContain('Take hands before anyone speaks.');
    expect(complaints).toEqual([]);
  });

  it('can be read to the end without a script running', { tags: 'every-run' }, async () => {
    const { page } = await visit({ javaScriptEnabled: false });
    await page.goto(lessonPath(SLUG));
    await page.getByRole('link', { name: 'Read the lesson as one page' }).click();
    await page.getByRole('heading', { name: 'What to take along' }).waitFor();
    expect(await textOf(page)).toContain('On arrival 11 min are left.');
  });

  it('leads every term it links to to its place in the glossary', async () => {
    const { page } = await visit();
    await arrive(page, textPath(SLUG));
    const terms = await page
      .locator(`main a[href^="${glossaryPath}#"]`)
      .evaluateAll((links) => links.map((link) => new URL((link as HTMLAnchorElement).href).hash.slice(1)));
    expect(terms.length).toBeGreaterThan(4);
    await arrive(page, glossaryPath);
    for (const term of new Set(terms)) expect(await page.locator(`[id="${term}"]`).count()).toBe(1);
  });
});

describe('the workshop in a browser', () => {
  it('makes a lesson from one on the shelf, exports it, reads it back and passes it on', async () => {
    const { page, complaints } = await visit({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
    await arrive(page, workshopPath);
    await page.getByRole('combobox', { name: 'Lesson' }).selectOption(SLUG);
    await page.getByRole('button', { name: 'Copy the lesson' }).click();
    await page.getByText('The lesson is sound').waitFor();
    await page.getByRole('textbox', { name: 'Title' }).fill('My own no-stop time');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('my-own-no-stop-time.yaml');
    const file = (await download.path())!;
    await page.getByRole('button', { name: 'All your lessons' }).click();
    await page.getByLabel('Import a file').setInputFiles(file);
    await page.getByRole('heading', { name: 'My own no-stop time' }).waitFor();
    await page.getByText('The lesson is sound').waitFor();
    await page.getByText('Try it as a student').click();
    await page.getByRole('heading', { name: 'What the number promises' }).waitFor();
    // Its questions can be pages of their own too.
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.getByRole('button', { name: 'Tools of this lesson' }).click();
    await page.getByRole('button', { name: 'This question as a page of its own' }).click();
    const line = await page.getByRole('textbox', { name: 'Line for a frame' }).inputValue();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByText('Write', { exact: true }).click();
    await page.getByRole('button', { name: 'Pass on' }).click();
    const link = await page.getByRole('dialog').getByRole('textbox', { name: 'Link' }).inputValue();
    expect(await accessibilityFaults(page)).toEqual([]);

    const { page: other, complaints: otherComplaints } = await visit();
    await arrive(other, link.replace(/^https?:\/\/[^/]+/, ''));
    await other.getByRole('heading', { name: 'A lesson came with this link: My own no-stop time' }).waitFor();
    await other.getByRole('button', { name: 'Take the lesson' }).click();
    await other.getByRole('heading', { name: 'What the number promises' }).waitFor();
    await arrive(other, workshopPath);
    await other.getByText(/None yet/).waitFor();
    await other.goto(/src="([^"]*)"/.exec(line)![1]!);
    await other.getByText('My own no-stop time').waitFor();
    await other.getByRole('button', { name: 'Show what the model says' }).waitFor();
    expect([...complaints, ...otherComplaints]).toEqual([]);
  }, 120_000);

  it('keeps a lesson as it is written, through a reload', async () => {
    const { page } = await visit();
    await arrive(page, workshopPath);
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page.getByRole('textbox', { name: 'Title' }).fill('Kept as written');
    await page.waitForTimeout(1200);
    await arrive(page, workshopPath);
    await page.getByRole('button', { name: 'Open Kept as written' }).click();
    await page.getByRole('textbox', { name: 'Title' }).waitFor();
  });

  it('runs nothing of a hostile lesson', async () => {
    const { page, complaints } = await visit();
    const hostile =
      'title: "<img src=x onerror=window.hacked=1>"\nsummary: x\nlevel: first steps\nminutes: 5\nobjectives: ["<script>window.hacked=1</script>"]\nscripts: { main: { title: x, script: "descend to 10 m at 9 m/min\\nascend to surface at 9 m/min\\n" } }\nsteps: [{ kind: read, id: ab, title: "<svg onload=window.hacked=1>", text: "x" }]\n';
    await arrive(page, `${workshopPath}#${valueOf(encodeLesson(hostile))}`);
    await page.getByText('It cannot be run as it stands:').waitFor();
    await page.getByRole('button', { name: 'Keep it and mend it' }).click();
    await page.getByText('As text').click();
    await page.waitForTimeout(300);
    expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
    expect(complaints).toEqual([]);
  });
});
