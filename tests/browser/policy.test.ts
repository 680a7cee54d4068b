// @module-tag in-turn
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { openDesk, openTools } from './kept-desk';
import { drawn } from './drawn';
import { builtPages, pagesToWalk } from './pages';
import { underPolicy } from './under-policy';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();
const LESSON = '04-no-stop-time';

/** A visit in which it is noted what the pages' policy refused and what was asked of any other origin. */
async function watched() {
  const { page, complaints } = await visit();
  return { page, complaints, ...(await underPolicy(page, inject('siteAddress'))) };
}

const saved = async (page: Page, button: string) => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).first().click(),
  ]);
  return download.suggestedFilename();
};

describe('the policy of each page', () => {
  it(
    'is kept to by pages as the server sends them, and none asks anything of another origin',
    { tags: 'every-run', timeout: 600_000 },
    async () => {
      const { page, complaints, refused, abroad } = await watched();
      // Every kind of page in every run is walked so without a network (offline.test.ts).
      for (const path of drawn(pagesToWalk(), 8)) await arrive(page, path);
      expect(refused).toEqual([]);
      expect(abroad).toEqual([]);
      expect(complaints).toEqual([]);
    },
  );

  it('is in every page of the site, and allows nothing from elsewhere', { tags: 'every-run' }, () => {
    const pages = builtPages();
    expect(pages.length).toBeGreaterThan(60);
    for (const path of pages) {
      const page = readFileSync(join(siteFolder, path, 'index.html'), 'utf8');
      const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/i.exec(page)?.[1];
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).not.toMatch(/unsafe|https?:|\*/);
    }
  });

  it('stands before anything that it could refuse', async () => {
    const { page } = await visit();
    await page.goto(routes.desk.path);
    const order = await page.evaluate(() =>
      Array.from(document.head.children, (child) => child.outerHTML.slice(0, 50)),
    );
    expect(order[0]).toMatch(/^<meta charset="utf-8"/i);
    expect(order[1]).toContain('Content-Security-Policy');
  });

  it('lets no script run that the site was not built with', { tags: 'every-run' }, async () => {
    const { page, refused } = await watched();
    await arrive(page, routes.home.path);
    const ran = await page.evaluate(async () => {
      const marks = window as unknown as Record<string, unknown>;
      const script = document.createElement('script');
      script.textContent = 'window.ranInline = true';
      document.body.append(script);
      const picture = document.createElement('img');
      picture.setAttribute('onerror', 'window.ranHandler = true');
      picture.src = '/no-such-picture.png';
      document.body.append(picture);
      const fromBlob = document.createElement('script');
      fromBlob.src = URL.createObjectURL(new Blob(['window.ranBlob = true'], { type: 'text/javascript' }));
      document.body.append(fromBlob);
      await new Promise((resolve) => setTimeout(resolve, 500));
      return [marks['ranInline'], marks['ranHandler'], marks['ranBlob']];
    });
    expect(ran).toEqual([undefined, undefined, undefined]);
    expect(refused.filter((what) => what.includes('script-src'))).toHaveLength(3);
  });

  it('lets nothing be sent to another origin', async () => {
    const { page, refused } = await watched();
    await arrive(page, routes.home.path);
    const answer = await page.evaluate(() =>
      fetch('https://elsewhere.invalid/?dive=mine').then(
        () => 'sent',
        () => 'refused',
      ),
    );
    expect(answer).toBe('refused');
    await expect.poll(() => refused.join()).toContain('connect-src refused https://elsewhere.invalid');
  });
});

describe('work under the policy', () => {
  it('prints, saves pictures and passes on from the desk', async () => {
    const { page, complaints, refused, abroad } = await watched();
    await page.addInitScript(() => void (window.print = () => undefined));
    await openDesk(page);
    await openTools(page, 'The dive');
    expect(await saved(page, 'Save The dive as SVG')).toMatch(/\.svg$/);
    expect(await saved(page, 'Save The dive as PNG')).toMatch(/\.png$/);
    await page.getByRole('button', { name: 'Why this no-stop time?' }).click();
    await page.locator('math').first().waitFor();
    await page.getByRole('button', { name: 'Close', exact: true }).first().click();
    await page.getByRole('button', { name: 'Print', exact: true }).first().click();
    // The dialog is fetched when it is asked for, and Escape means it only once it is there.
    await page.getByRole('dialog', { name: 'Print this dive' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Pass on' }).click();
    await page.getByRole('img', { name: 'QR code of the link' }).waitFor();
    expect(await saved(page, 'Save the readings as CSV')).toMatch(/\.csv$/);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Present', exact: true }).click();
    await page.waitForTimeout(500);
    await page.emulateMedia({ media: 'print' });
    expect(refused).toEqual([]);
    expect(abroad).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('works out plates, checks and a brought dive in workers, and saves what comes of it', async () => {
    const { page, complaints, refused, abroad } = await watched();
    await page.goto(`${routes.curves.path}#gradient-factors`);
    await page.getByRole('figure', { name: 'Time to surface for each pair of gradient factors' }).waitFor();
    await page.getByRole('link', { name: 'Limits' }).click();
    expect(await saved(page, 'Save What each compartment tolerates as PNG')).toMatch(/\.png$/);
    await arrive(page, routes.evidence.path);
    await page.goto(routes.bring.path);
    await page
      .getByLabel('Choose a UDDF or CSV file, or drop it here')
      .setInputFiles(join(process.cwd(), 'content/records/quarry-clean.csv'));
    expect(await saved(page, 'Export as UDDF')).toMatch(/\.uddf$/);
    await page.goto(lessonPath(LESSON, 'watch-it'));
    await page.getByRole('button', { name: 'Speed and moments' }).click();
    await page.getByRole('combobox', { name: 'Speed' }).selectOption('120');
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.getByText(/and they are falling fast/).waitFor();
    expect(refused).toEqual([]);
    expect(abroad).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('shows a whole lesson to a class, and lets a lesson that was written here be tried', async () => {
    const { page, complaints, refused, abroad } = await watched();
    await arrive(page, lessonPath(LESSON));
    await page.getByRole('button', { name: 'Tools of this lesson' }).click();
    await page.getByRole('button', { name: 'Present to a class' }).click();
    const at = page.getByRole('group', { name: 'Presenting' }).getByText(/^\d+ of \d+$/);
    const last = (await at.textContent())!.replace(/^\d+ of (\d+)$/, '$1 of $1');
    for (let presses = 0; presses < 40 && (await at.textContent()) !== last; presses += 1) {
      await page.keyboard.press('PageDown');
      await page.waitForTimeout(300);
    }
    expect(await at.textContent()).toBe(last);
    await page.keyboard.press('Escape');
    await arrive(page, workshopPath);
    await page.getByRole('combobox', { name: 'Lesson' }).selectOption(LESSON);
    await page.getByRole('button', { name: 'Copy the lesson' }).click();
    await page.getByText('The lesson is sound').waitFor();
    await page.getByText('Try it as a student').click();
    await page.getByRole('button', { name: 'Go on' }).click();
    expect(refused).toEqual([]);
    expect(abroad).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
