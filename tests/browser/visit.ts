import axe, { type RunOptions } from 'axe-core';
import type { Browser, BrowserContext, BrowserContextOptions, Page, Request } from 'playwright-core';
import { afterEach, inject } from 'vitest';
import { preferencesKey } from '@/app/parts/theme';
import { LONG } from '@/tests/laws/law';
import { launchChromium } from './chromium';

interface VisitOptions extends BrowserContextOptions {
  /** Choices remembered from an earlier visit. */
  preferences?: { theme?: string; units?: string };
  /** Keeps a copy of the site for use without a network, as browsers do. */
  keepsSite?: boolean;
  /** Draws what moves as often as the machine can: where frames themselves are looked at, and where there is time. */
  everyFrame?: boolean;
}

export interface Visit {
  page: Page;
  /** Errors and warnings the page has put in the console so far. */
  complaints: string[];
}

/** One browser for all files a worker runs; it ends with the worker's process. */
const kept = globalThis as { chromium?: Promise<Browser> | undefined };

async function sharedChromium(): Promise<Browser> {
  const open = await kept.chromium?.catch(() => undefined);
  if (open?.isConnected() === true) return open;
  return (kept.chromium = launchChromium());
}

/** What is still on its way to a person's pages. */
const underWay = new WeakMap<BrowserContext, Set<Request>>();

/** Each visit is a fresh person with nothing stored, and leaves when its test ends. */
export function browserVisits(): (options?: VisitOptions) => Promise<Visit> {
  let contexts: BrowserContext[] = [];

  afterEach(async () => {
    await Promise.all(contexts.map((context) => context.close()));
    contexts = [];
  });

  return async ({ preferences, keepsSite = false, everyFrame = LONG, ...options } = {}) => {
    // A window in which the desk has its script open beside the pictures.
    const viewport = { width: 1440, height: 900 };
    const browser = await sharedChromium();
    const context = await browser.newContext({ baseURL: inject('siteAddress'), viewport, ...options });
    contexts.push(context);
    const requests = new Set<Request>();
    underWay.set(context, requests);
    context.on('request', (request) => void requests.add(request));
    context.on('requestfinished', (request) => void requests.delete(request));
    context.on('requestfailed', (request) => void requests.delete(request));
    if (preferences) {
      await context.addInitScript(
        ([key, record]) => {
          if (localStorage.getItem(key) === null) localStorage.setItem(key, record);
        },
        [preferencesKey, JSON.stringify({ state: preferences, version: 1 })] as const,
      );
    }
    // A visit is about one screen; that the whole site is kept on a machine is tested by itself.
    if (!keepsSite)
      await context.addInitScript(() => void Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
    if (!everyFrame) await context.addInitScript(drawFewer);
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => {
      // That a letter was not drawn within seconds says how busy the machine is.
      if (/was preloaded using link preload but not used within a few seconds/.test(message.text())) return;
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    return { page, complaints };
  };
}

/**
 * Run in a page: what asks for a frame in each frame, as a dive that plays does, gets some ten a second, as on a slow machine.
 * Painting all of them would be most of what the tests do.
 */
function drawFewer(): void {
  const EVERY_MS = 80;
  /** Whoever asks so often in a row goes on asking. */
  const IN_A_ROW = 4;
  const ask = window.requestAnimationFrame.bind(window);
  const drop = window.cancelAnimationFrame.bind(window);
  const waiting = new Map<number, FrameRequestCallback>();
  let row = 0;
  let asked = 0;
  let beating = false;
  const inRow = (callback: FrameRequestCallback, its: number) => (now: number) => {
    row = its;
    try {
      callback(now);
    } finally {
      row = 0;
    }
  };
  const beat = (now: number) => {
    beating = false;
    for (const [id, callback] of [...waiting]) if (waiting.delete(id)) inRow(callback, IN_A_ROW)(now);
  };
  window.requestAnimationFrame = (callback) => {
    if (row < IN_A_ROW) return ask(inRow(callback, row + 1));
    asked -= 1;
    waiting.set(asked, callback);
    if (!beating) setTimeout(() => ask(beat), EVERY_MS);
    beating = true;
    return asked;
  };
  window.cancelAnimationFrame = (id) => (id < 0 ? void waiting.delete(id) : drop(id));
}

/** How long nothing may be on its way for a page to be at rest, ms: what a part asks for when it is drawn begins within it. */
const QUIET_MS = 60;

/** Opens an address and waits until all of it answers to a person. */
export async function arrive(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await settled(page);
}

/** Waits until the page answers, has drawn what it has and waits for nothing more. */
export async function settled(page: Page): Promise<void> {
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  const requests = underWay.get(page.context()) ?? new Set();
  for (let quietSince = Date.now(); Date.now() - quietSince < QUIET_MS;) {
    await new Promise((resolve) => setTimeout(resolve, QUIET_MS / 4));
    if (requests.size > 0) quietSince = Date.now();
  }
  await page.evaluate(() => new Promise<void>((idle) => requestIdleCallback(() => idle(), { timeout: 1000 })));
}

/**
 * What axe finds wrong, one line each: the rule and the elements that break it. Run in the page itself, where it need not be
 * brought in anew each time, and asked for nothing but the faults.
 */
async function faultsOf(page: Page, options: RunOptions): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(
    async (asked) => {
      const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, asked);
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
    },
    { resultTypes: ['violations'], preload: false, selectors: false, ...options } satisfies RunOptions,
  );
}

/** What axe finds wrong with a page. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  // Off unless asked for, and part of WCAG 2.2 AA: nothing to hit is smaller than 24 px without room around it.
  return faultsOf(page, { rules: { 'target-size': { enabled: true } } });
}

/** The same of a page in light and then in dark colours. A theme changes colours and nothing else. */
export async function faultsInEitherTheme(page: Page): Promise<string[]> {
  const inTheme = (theme: string) =>
    page.evaluate((name) => void (document.documentElement.dataset['theme'] = name), theme);
  await inTheme('light');
  const light = await accessibilityFaults(page);
  await inTheme('dark');
  const dark = await faultsOf(page, { runOnly: ['color-contrast', 'link-in-text-block'] });
  await inTheme('light');
  return [...light, ...dark.map((fault) => `dark: ${fault}`)];
}

/** How many pixels the page is wider than its window; more than 0 means it scrolls sideways. */
export async function sidewaysPx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/**
 * Goes through the page by Tab, so many presses or once round, and names what takes the focus without being seen to: with no
 * mark of it, outside the window, or wholly under something else.
 */
export async function hiddenFocus(page: Page, presses: number): Promise<string[]> {
  const faults: string[] = [];
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    window.scrollTo(0, 0);
  });
  for (let i = 0; i < presses; i += 1) {
    await page.keyboard.press('Tab');
    const found = await page.evaluate(async () => {
      // What the focus brings in takes its place in the next frame.
      await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
      const element = document.activeElement;
      // Past the last there is the browser itself or, in some, the first again.
      if (!element || element === document.body || element.hasAttribute('data-walked'))
        return { name: '', fault: 'end' };
      element.setAttribute('data-walked', '');
      const name = `${element.tagName.toLowerCase()} ${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40)}`;
      // A radio that is drawn by its label, or a file box by its button, shows the focus there.
      const seen =
        element instanceof HTMLInputElement && element.labels?.[0] && element.getBoundingClientRect().width < 8
          ? element.labels[0]
          : element;
      const { left, top, right, bottom } = seen.getBoundingClientRect();
      const [x0, y0, x1, y1] = [
        Math.max(0, left),
        Math.max(0, top),
        Math.min(innerWidth, right),
        Math.min(innerHeight, bottom),
      ];
      if (x1 - x0 < 1 || y1 - y0 < 1) return { name, fault: 'out of the window' };
      const points = [0.05, 0.5, 0.95].flatMap((x) =>
        [0.05, 0.5, 0.95].map((y) => [x0 + (x1 - x0) * x, y0 + (y1 - y0) * y] as const),
      );
      const uncovered = points.some(([x, y]) => {
        const there = document.elementFromPoint(x, y);
        return there !== null && (seen.contains(there) || there.contains(seen));
      });
      if (!uncovered) return { name, fault: 'under something else' };
      // The mark may be on the element, on what holds it, or on what follows it.
      const marked = [element, seen, element.parentElement, element.nextElementSibling].some((one) => {
        if (!one) return false;
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
        return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
      });
      const inPicture = element instanceof SVGElement;
      return { name, fault: marked || inPicture ? '' : 'without a mark' };
    });
    if (found.fault === 'end') break;
    if (found.fault !== '') faults.push(`${found.name}: ${found.fault}`);
  }
  return faults;
}

/** Controls that lie over one another, as names of pairs; what is held at an edge of the window while the rest scrolls is left out. */
export async function overlaidControls(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const held = (element: Element | null): boolean =>
      element !== null && (/fixed|sticky/.test(getComputedStyle(element).position) || held(element.parentElement));
    const controls = [...document.querySelectorAll('main :is(button, a, select, textarea, summary)')].flatMap(
      (element) => {
        // A link that goes on in the next line has a box in each.
        const boxes = [...element.getClientRects()].filter((box) => box.width >= 2 && box.height >= 2);
        return boxes.length === 0 || held(element) || !element.checkVisibility() || element.closest('svg')
          ? []
          : [{ element, boxes }];
      },
    );
    const overlaid = (box: DOMRect, its: DOMRect) =>
      Math.min(box.right, its.right) - Math.max(box.left, its.left) >= 3 &&
      Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top) >= 3;
    return controls.flatMap(({ element, boxes }, index) =>
      controls.slice(index + 1).flatMap(({ element: other, boxes: theirs }) => {
        if (
          !boxes.some((box) => theirs.some((its) => overlaid(box, its))) ||
          element.contains(other) ||
          other.contains(element)
        )
          return [];
        const name = (one: Element) => (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40);
        return [`${name(element)} / ${name(other)}`];
      }),
    );
  });
}
