import AxeBuilder from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { launchChromium } from './chromium';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

beforeEach(async () => {
  context = await browser.newContext({ baseURL: inject('siteAddress') });
  page = await context.newPage();
  complaints = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
});
afterEach(() => context.close());

describe('the front door', () => {
  it('draws text that has a width, so the browser under test really has letters', async () => {
    await page.goto('/');
    const heading = await page.getByRole('heading', { level: 1 }).evaluate((element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      return range.getBoundingClientRect().width;
    });
    expect(heading).toBeGreaterThan(50);
  });

  it('opens with nothing to complain of in the console', async () => {
    await page.goto('/', { waitUntil: 'networkidle' });
    expect(complaints).toEqual([]);
  });

  it('says the caution', async () => {
    await page.goto('/');
    expect(await page.getByText(cautions.general).isVisible()).toBe(true);
  });

  it('has no accessibility violation that axe can find', async () => {
    await page.goto('/');
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([]);
  });
});
