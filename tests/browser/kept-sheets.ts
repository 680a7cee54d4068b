import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';

/* What the bench and lessons keep of a person's work, as that person meets it. */

const LESSON = '04-no-stop-time';
export const SHEET = 'halftime.bench';
export const PROGRESS = 'halftime.lessons';

export const said = (page: Page, words: RegExp | string) =>
  page.getByRole('status').getByText(words).first().waitFor({ timeout: 10_000 });
const runScript = (page: Page): Locator => page.getByLabel(/^The run as a script/);
export const run = (name: string) =>
  `descend to 10 m at 10 m/min\nstay 1 min # check: ${name}\nascend to surface at 10 m/min\n`;

/** Opens the bench once what was kept is on it: only then does a change show what a unit should show. */
export async function openBench(page: Page, words = 'gas: air'): Promise<void> {
  await page.goto(routes.bench.path, { waitUntil: 'load' });
  await expectRun(page, words);
}

export async function expectRun(page: Page, words: string): Promise<void> {
  await expect.poll(() => runScript(page).inputValue(), { timeout: 15_000 }).toContain(words);
}

/** Writes a run into the sheet. */
export async function write(page: Page, name: string): Promise<void> {
  await runScript(page).fill(run(name));
  await page.getByRole('group', { name: `Unit 1 at ${name}` }).waitFor();
}

export async function openLesson(page: Page, slug = LESSON): Promise<void> {
  await page.goto(lessonPath(slug), { waitUntil: 'load' });
  await page.getByRole('button', { name: 'Go on' }).waitFor();
}

export const kept = (page: Page, name: string) => page.evaluate((key) => localStorage.getItem(key), name);
export const doneIn = async (page: Page, slug = LESSON) => {
  const record = JSON.parse((await kept(page, PROGRESS)) ?? '{}') as {
    state?: { progress: { lessons: Record<string, { seen: string[] }> } };
  };
  return record.state?.progress.lessons[slug]?.seen ?? [];
};
