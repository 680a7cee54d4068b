// @module-tag in-turn
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { serveSite, type RunningSite } from '@/app/commands/serve/serve-site';
import { lessonPath, workshopPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { linkTo, openDesk, restored, script } from './kept-desk';
import { pagesToWalk } from './pages';
import { underPolicy } from './under-policy';
import { browserVisits, settled } from './visit';

const visit = browserVisits();

const SLUG = '04-no-stop-time';

let site: RunningSite | undefined;
const leaveNetwork = async () => {
  await site?.close();
  site = undefined;
};
afterEach(leaveNetwork);

/** A first visit, with all of the site kept by the browser at its end. */
async function keptVisit(folder = siteFolder) {
  site = await serveSite(folder, 0);
  const found = await visit({ baseURL: site.address, keepsSite: true, viewport: { width: 1440, height: 900 } });
  await found.page.goto(routes.home.path);
  await found.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await found.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return { ...found, address: site.address };
}

const fontsLoaded = (page: Page) =>
  page.evaluate(async () => {
    await document.fonts.ready;
    return Array.from(document.fonts)
      .filter(({ status }) => status === 'loaded')
      .map(({ family }) => family.replaceAll('"', ''));
  });

describe('without a network, after one visit', () => {
  it(
    'every kind of page opens, in its own letters, keeps to its policy and asks nothing of another origin, and what is no page leads to the one that says so',
    { tags: 'every-run', timeout: 300_000 },
    async () => {
      const { page, complaints, address } = await keptVisit();
      const { refused, abroad } = await underPolicy(page, address);
      await leaveNetwork();
      for (const path of pagesToWalk()) {
        const answer = await page.goto(path);
        await settled(page);
        expect(answer?.fromServiceWorker(), path).toBe(true);
        expect(await page.getByRole('heading', { level: 1 }).first().isVisible(), path).toBe(true);
        expect(await fontsLoaded(page), path).toEqual(
          expect.arrayContaining(['Source Sans 3 Variable', 'Source Serif 4 Variable']),
        );
      }
      await page.goto(lessonPath('14-enriched-air'), { waitUntil: 'commit' });
      await page.waitForURL(`**${lessonPath('12-enriched-air')}`);
      for (const path of ['/no/such/page/', '/no-such-page', '/no-such-page.html']) {
        await page.goto(path);
        await page.getByRole('heading', { level: 1, name: 'There is no page here' }).waitFor();
      }
      await page.getByRole('link', { name: 'Go to the front door' }).click();
      await page.waitForURL(`**${routes.home.path}`);
      expect(refused).toEqual([]);
      expect(abroad).toEqual([]);
      expect(complaints).toEqual([]);
    },
  );

  it('work goes on: in workers, with parts fetched when asked for, over links and from screen to screen', async () => {
    const { page, complaints } = await keptVisit();
    await openDesk(page);
    const link = await linkTo(page);
    await leaveNetwork();
    await page.goto(routes.home.path);
    await page.goto(link);
    await page.getByText(/^Opened “.*” from the link/).waitFor();
    await page.goto(`${routes.desk.path.replace(/\/$/, '')}?from=a-note`);
    expect(new URL(page.url()).pathname).toBe(routes.desk.path);
    await restored(page);
    await page.goto(routes.evidence.path);
    await page
      .getByText(/^(\d{2,}) of \1 checks hold\.$/)
      .first()
      .waitFor();
    await page.goto(`${routes.curves.path}#gradient-factors`);
    await page.getByRole('figure', { name: 'Time to surface for each pair of gradient factors' }).waitFor();
    await page.goto(routes.bring.path);
    await page
      .getByLabel('Choose a UDDF or CSV file, or drop it here')
      .setInputFiles(join(process.cwd(), 'content/records/quarry-clean.csv'));
    await page.getByRole('button', { name: 'Open on the desk' }).click();
    await page.waitForURL(`**${routes.desk.path}`);
    await restored(page);
    expect(await script(page).inputValue()).toContain('quarry-clean: a recorded dive');
    await page.getByRole('button', { name: 'Why this no-stop time?' }).click();
    await page.locator('math').first().waitFor();
    expect(await fontsLoaded(page)).toContain('Noto Sans Math');
    await page.goto(lessonPath(SLUG, 'watch-it'));
    await page.getByRole('button', { name: 'Next moment' }).click();
    await page
      .getByText(/and they are falling fast|You are down/)
      .first()
      .waitFor();
    await page.goto(workshopPath);
    await page.getByRole('button', { name: 'New lesson' }).click();
    await page.getByText(/^The lesson is sound|things? to mend\.$/).waitFor();
    expect(complaints).toEqual([]);
  }, 300_000);
});

describe('that the site is kept', () => {
  const TOLD = /Halftime is now kept in this browser/;

  it('is told once', async () => {
    const { page, complaints } = await keptVisit();
    await page.getByText(TOLD).waitFor();
    await page.goto(routes.model.path, { waitUntil: 'networkidle' });
    expect(await page.getByText(TOLD).count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('is not told, and nothing breaks, where the browser refuses', async () => {
    site = await serveSite(siteFolder, 0);
    const { page, complaints } = await visit({ baseURL: site.address, keepsSite: true });
    await page.addInitScript(() => {
      navigator.serviceWorker.register = () =>
        Promise.reject(new DOMException('The operation is insecure.', 'SecurityError'));
    });
    await openDesk(page);
    await page.waitForLoadState('networkidle');
    expect(await page.getByText(TOLD).count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('makes it one that can be installed, with its name, its caution and icons of the sizes said', async () => {
    site = await serveSite(siteFolder, 0);
    const { address } = site;
    const { page } = await visit({ baseURL: address });
    await page.goto(routes.home.path);
    const named = await page.locator('link[rel=manifest]').getAttribute('href');
    const manifest = (await (await fetch(new URL(named!, address))).json()) as {
      name: string;
      description: string;
      display: string;
      icons: { src: string; sizes: string }[];
    };
    expect(manifest).toMatchObject({
      name: 'Halftime',
      display: 'standalone',
      description: expect.stringContaining('never to dive on') as string,
    });
    for (const { src, sizes } of manifest.icons.filter(({ sizes: size }) => size !== 'any')) {
      const measured = await page.evaluate(async (source) => {
        const image = new Image();
        image.src = source;
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, src);
      expect(measured).toBe(sizes);
    }
  });
});

/** Puts a newer version of one lesson's page where the older was, as a new build would. */
function publishNewer(folder: string): void {
  const page = join(folder, `${lessonPath(SLUG)}index.html`);
  writeFileSync(
    page,
    readFileSync(page, 'utf8').replace(
      '<meta name="viewport"',
      '<meta name="told-apart" content="newer"/><meta name="viewport"',
    ),
  );
  const worker = join(folder, 'sw.js');
  const before = readFileSync(worker, 'utf8');
  const entry = new RegExp(`(url:"lessons/${SLUG}/index\\.html",revision:")[0-9a-f]+`);
  expect(before).toMatch(entry);
  writeFileSync(worker, before.replace(entry, '$1f00d'));
}

const isNewer = async (page: Page) => (await page.locator('meta[name=told-apart]').count()) > 0;
const strip = (page: Page) => page.getByRole('status').filter({ hasText: 'A newer version of Halftime is ready.' });

/** A person in a lesson, when a newer version is published. */
async function newerDuringLesson() {
  const folder = mkdtempSync(join(tmpdir(), 'halftime-site-'));
  cpSync(siteFolder, folder, { recursive: true });
  const kept = await keptVisit(folder);
  const { page } = kept;
  await page.goto(lessonPath(SLUG, 'on-arrival'), { waitUntil: 'networkidle' });
  await page.getByLabel('Your answer').fill('12');
  await page.evaluate(() => void Object.assign(window, { notReloaded: true }));
  const port = Number(new URL(kept.address).port);
  await leaveNetwork();
  publishNewer(folder);
  site = await serveSite(folder, port);
  return { ...kept, forget: () => rmSync(folder, { recursive: true }) };
}

/** Another window of the same browser, which finds the newer version. */
async function anotherWindow(context: BrowserContext, path: string): Promise<Page> {
  const other = await context.newPage();
  await other.goto(path, { waitUntil: 'networkidle' });
  await strip(other).waitFor();
  return other;
}

describe('a newer version', () => {
  it('announces itself, waits, and is used when a person says so', async () => {
    const { page, forget } = await newerDuringLesson();
    const before = await page.getByRole('heading', { level: 1 }).boundingBox();
    const other = await anotherWindow(page.context(), lessonPath(SLUG));
    expect(await isNewer(other), 'the older is shown until someone asks').toBe(false);

    await strip(page).waitFor();
    expect(await page.getByRole('heading', { level: 1 }).boundingBox(), 'nothing has moved').toEqual(before);
    expect(await page.getByLabel('Your answer').inputValue()).toBe('12');

    await strip(other).getByRole('button', { name: 'Use it now' }).click();
    await other.waitForFunction(() => document.querySelector('meta[name=told-apart]') !== null);
    expect(await strip(other).count()).toBe(0);

    // The lesson goes on in its own window, which is told.
    await page
      .getByRole('status')
      .filter({ hasText: 'Halftime is newer in another window than in this one.' })
      .waitFor();
    expect(await page.evaluate(() => 'notReloaded' in window)).toBe(true);
    expect(await page.getByLabel('Your answer').inputValue()).toBe('12');
    await page.getByRole('button', { name: 'Use it now' }).click();
    await page.waitForFunction(() => document.querySelector('meta[name=told-apart]') !== null);
    forget();
  }, 300_000);

  it('is put off with Later for as long as the window is open, and keeps out of the way of what is shown to a class', async () => {
    const { page, forget } = await newerDuringLesson();
    const other = await anotherWindow(page.context(), routes.desk.path);
    await strip(page).getByRole('button', { name: 'Later' }).click();
    expect(await strip(page).count()).toBe(0);
    await page.goto(routes.model.path, { waitUntil: 'networkidle' });
    expect(await strip(page).count()).toBe(0);
    expect(await strip(other).isVisible()).toBe(true);
    await other.getByRole('button', { name: 'Present', exact: true }).click();
    await other.getByRole('button', { name: 'Leave the presenter’s view' }).waitFor();
    expect(await strip(other).isVisible()).toBe(false);
    await other.getByRole('button', { name: 'Leave the presenter’s view' }).click();
    await strip(other).waitFor();
    forget();
  }, 300_000);
});
