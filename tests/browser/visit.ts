import AxeBuilder from '@axe-core/playwright';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, inject } from 'vitest';
import { preferencesKey } from '@/app/parts/theme';
import { launchChromium } from './chromium';

interface VisitOptions extends BrowserContextOptions {
  /** Choices remembered from an earlier visit. */
  preferences?: { theme?: string; units?: string };
  /** Keeps a copy of the site for use without a network, as browsers do. */
  keepsSite?: boolean;
}

export interface Visit {
  page: Page;
  /** Errors and warnings the page has put in the console so far. */
  complaints: string[];
}

/** One browser for a test file. Each visit is a fresh person with nothing stored, and leaves when its test ends. */
export function browserVisits(): (options?: VisitOptions) => Promise<Visit> {
  let browser: Browser;
  let contexts: BrowserContext[] = [];

  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterEach(async () => {
    await Promise.all(contexts.map((context) => context.close()));
    contexts = [];
  });
  afterAll(() => browser.close());

  return async ({ preferences, keepsSite = false, ...options } = {}) => {
    const context = await browser.newContext({ baseURL: inject('siteAddress'), ...options });
    contexts.push(context);
    if (preferences) {
      await context.addInitScript(
        ([key, record]) => {
          if (localStorage.getItem(key) === null) localStorage.setItem(key, record);
        },
        [preferencesKey, JSON.stringify({ state: preferences, version: 1 })] as const,
      );
    }
    // A visit is about one screen; that the whole site is kept on a machine is tested by itself.
    if (!keepsSite) await context.addInitScript(() => void Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    return { page, complaints };
  };
}

/** What axe finds wrong, one line each: the rule and the elements that break it. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
}

/** How many pixels the page is wider than its window; more than 0 means it scrolls sideways. */
export async function sidewaysPx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
