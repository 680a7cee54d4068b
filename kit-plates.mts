import { launchChromium } from './tests/browser/chromium';
import { plateFaults } from './tests/browser/plate-faults';
import { siteFolder } from './app/commands/build-site';
import { classHandler } from './app/commands/class/class-handler';
import { serveSite } from './app/commands/serve-site';
import type { Page } from 'playwright-core';
export const DIR = '/tmp/halftime/plates/shots';
export async function kit() {
  const site = await serveSite(siteFolder, 0, { handlers: [classHandler()] });
  const browser = await launchChromium();
  const contexts: any[] = [];
  const visit = async (width: number, height: number, o: any = {}) => {
    const c = await browser.newContext({ baseURL: site.address, viewport: { width, height }, reducedMotion: 'reduce', acceptDownloads: true, ...o });
    contexts.push(c);
    await c.addInitScript(() => void Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
    await c.addInitScript('globalThis.__name = (f) => f');
    c.setDefaultTimeout(20000);
    const page = await c.newPage();
    page.on('pageerror', (e: Error) => console.log('PAGEERROR', e.message));
    page.on('console', (m: any) => { if (m.type() === 'error') console.log('CONSOLE', m.text().slice(0, 200)); });
    return page;
  };
  return { site, browser, visit, end: async () => { await browser.close(); await site.close(); } };
}
export async function settle(page: Page, ms = 500) {
  await page.locator('html[data-ready]').waitFor({ state: 'attached', timeout: 15000 }).catch(() => {});
  await page.waitForLoadState('networkidle').catch(() => {});
  await page.waitForTimeout(ms);
}
export async function shot(page: Page, name: string, { dark = true, full = false, faults = true } = {}) {
  if (faults) for (const f of await plateFaults(page)) console.log(name, '|', f);
  const side = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (side > 0) console.log(name, '| sideways', side);
  await page.screenshot({ path: `${DIR}/${name}.png`, fullPage: full });
  if (dark) {
    const was = await page.evaluate(() => document.documentElement.dataset['theme'] ?? '');
    await page.evaluate(() => void (document.documentElement.dataset['theme'] = 'dark'));
    await page.waitForTimeout(150);
    if (faults) for (const f of await plateFaults(page)) console.log(name + '-dark', '|', f);
    await page.screenshot({ path: `${DIR}/${name}-dark.png`, fullPage: full });
    await page.evaluate((w) => { if (w) document.documentElement.dataset['theme'] = w; else delete document.documentElement.dataset['theme']; }, was);
  }
}
