import { loadavg } from 'node:os';
import type { Browser, Page } from 'playwright-core';
import { isSiteStale, siteFolder } from '@/app/commands/site/build-site';
import { classHandler } from '@/app/commands/class/class-handler';
import { serveSite } from '@/app/commands/serve/serve-site';
import { lessonPath } from '@/app/parts/lesson-paths';
import { routes } from '@/app/parts/routes';
import { launchChromium } from '../browser/chromium';
import { medianOf } from './workload';

/** How much slower than this machine the browser is made, for the phones and laptops of a class. */
const SLOWED = 4;
const LESSON = lessonPath('04-no-stop-time');
const QUESTION = `${LESSON}#who-at-eighteen`;
const WHY_STOP = /^Why this required stop/;
const TAUGHT = '#lesson=04-no-stop-time';
const VISITS = 7;
const TRIES = 8;
/** What the event timing of browsers counts in, ms: an answer quicker than this is told as this. */
const LEAST_MS = 16;

export interface ScreenTime {
  readonly name: string;
  readonly medianMs: number;
  readonly worstMs: number;
  readonly samples: number;
  /** What else this machine was at, processes: figures taken beside other work are too high. */
  readonly load: number;
}

/** An answer as the browser tells it: how long it took, and when it was asked for. */
interface Seen {
  readonly ms: number;
  readonly atMs: number;
}

/** One thing a person does, many times over; `then` is done in between and not timed. */
interface Doing {
  readonly name: string;
  readonly path: string;
  readonly ready?: (page: Page) => Promise<unknown>;
  readonly press: (page: Page) => Promise<unknown>;
  readonly then?: (page: Page) => Promise<unknown>;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const click = (name: string | RegExp) => (page: Page) => button(page, name).first().click();
const exactly = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const editor = (page: Page) => page.getByRole('textbox', { name: 'Dive script' });

const DOINGS: readonly Doing[] = [
  {
    name: 'desk-play',
    path: routes.desk.path,
    press: click('Play'),
    then: async (page) => (await page.waitForTimeout(300), await button(page, 'Pause').click()),
  },
  { name: 'desk-step', path: routes.desk.path, press: click('On 30 seconds') },
  { name: 'desk-step-playing', path: routes.desk.path, ready: click('Play'), press: click('On 30 seconds') },
  {
    name: 'desk-drag-point',
    path: routes.desk.path,
    ready: (page) => page.getByRole('slider', { name: /^Point 1$/ }).waitFor(),
    press: dragPoint,
  },
  {
    name: 'desk-type',
    path: routes.desk.path,
    ready: async (page) => (await editor(page).click(), await page.keyboard.press('Control+End')),
    press: (page) => page.keyboard.press('#'),
    then: (page) => page.keyboard.press('a'),
  },
  {
    name: 'desk-why',
    path: routes.desk.path,
    // The first answer also waits for its code, which is fetched; each after it does not.
    ready: async (page) => (
      await click('Why this no-stop time?')(page),
      await page.getByRole('heading', { name: /^Why\?/ }).waitFor(),
      await page.keyboard.press('Escape')
    ),
    press: click('Why this no-stop time?'),
    then: (page) => page.keyboard.press('Escape'),
  },
  { name: 'lesson-next', path: LESSON, press: click('Go on'), then: (page) => page.waitForTimeout(1500) },
  {
    name: 'lesson-answer',
    path: QUESTION,
    press: (page) => page.getByRole('main').getByRole('radio').and(page.locator(':not(:checked)')).first().click(),
  },
  {
    name: 'lesson-show',
    path: QUESTION,
    ready: guess,
    press: click('Show what the model says'),
    then: async (page) => (await click('Answer it again')(page), await guess(page)),
  },
  {
    name: 'ways-out-open',
    path: routes.desk.path,
    ready: async (page) => (await askWaysOut(page), await whyStop(page)),
    press: click('What would have avoided it?'),
    then: whyStop,
  },
  {
    name: 'ways-out-show',
    path: routes.desk.path,
    ready: askWaysOut,
    press: (page) => page.getByRole('listitem').getByRole('button', { name: 'Show it' }).first().click(),
    then: (page) => page.getByRole('listitem').getByRole('button', { name: 'Show it', pressed: true }).first().click(),
  },
  {
    name: 'class-ask',
    path: routes.teach.path + TAUGHT,
    ready: click('Open a class'),
    press: click('Ask: Shallower, who leads?'),
    then: async (page) => (await exactly(page, 'Close it'), await exactly(page, 'Next question')),
  },
  {
    name: 'class-answer',
    path: routes.class.path,
    ready: joinAsked,
    press: (page) => page.getByRole('main').getByRole('radio').and(page.locator(':not(:checked)')).first().click(),
  },
];

/** Stays too long, stands where the stop is owed, and asks what would have avoided it. */
async function askWaysOut(page: Page): Promise<void> {
  await editor(page).fill('gas: air\ndescend to 30 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n');
  await page.getByRole('slider', { name: 'Time cursor' }).fill('1290');
  await click(WHY_STOP)(page);
  await click('What would have avoided it?')(page);
  await page.getByRole('heading', { name: 'Leave the bottom earlier' }).waitFor();
}

/** Leaves the ways out for the working they are asked from. */
async function whyStop(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await click(WHY_STOP)(page);
  // Down to it, as whoever presses it is: going there takes a frame of its own.
  await button(page, 'What would have avoided it?').scrollIntoViewIfNeeded();
}

/** Comes into a class, as a phone, when its teacher has asked. The teacher's page isn't slowed. */
async function joinAsked(page: Page): Promise<void> {
  const wall = await page.context().newPage();
  await wall.goto(new URL(routes.teach.path + TAUGHT, page.url()).href, { waitUntil: 'networkidle' });
  await click('Open a class')(wall);
  const code = (await wall.locator('[class*="code"] b').textContent())!.replace(/\s/g, '');
  await click('Ask: Shallower, who leads?')(wall);
  await page.goto(`${page.url()}#${code}`);
  await page.reload();
  await click('Join the class')(page);
  await page.getByRole('main').getByRole('radio').first().waitFor();
  await page.bringToFront();
}

async function guess(page: Page): Promise<void> {
  await page.getByRole('main').getByRole('radio').first().check();
  await page.getByRole('radio', { name: 'A guess' }).check({ force: true });
}

async function dragPoint(page: Page): Promise<void> {
  const box = (await page.getByRole('slider', { name: /^Point 1$/ }).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 6; step += 1) await page.mouse.move(x, y - step * 3);
  await page.mouse.move(x, y);
  await page.mouse.up();
}

/**
 * How soon the main thing of a page is there (largest contentful paint), and how soon a page answers what is done on it
 * (event timing: from the press to the frame that shows it), on a processor slowed four times. The site has to be built.
 */
export async function* screenTimes(only?: string): AsyncGenerator<ScreenTime> {
  if (isSiteStale()) throw new Error('the site is not built, or older than its sources: run npm run build first');
  const { address, close } = await serveSite(siteFolder, 0, { handlers: [classHandler()] });
  const browser = await launchChromium();
  const wanted = (name: string) => only === undefined || only === name;
  try {
    for (const [name, path] of [
      ['front-door-paint', routes.home.path],
      ['desk-paint', routes.desk.path],
      ['lesson-paint', LESSON],
    ] as const) {
      if (!wanted(name)) continue;
      const times: number[] = [];
      for (let visit = 0; visit < VISITS; visit += 1) times.push(await largestPaintMs(browser, address + path));
      yield told(name, times);
    }
    for (const doing of DOINGS)
      if (wanted(doing.name)) yield told(doing.name, await answersMs(browser, address, doing));
  } finally {
    await browser.close();
    await close();
  }
}

function told(name: string, times: readonly number[]): ScreenTime {
  return { name, medianMs: medianOf(times), worstMs: Math.max(...times), samples: times.length, load: loadavg()[0]! };
}

/** A page of a person who was never here, on a slowed processor. */
async function slowPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  await context.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
    type Timed = PerformanceEntry & { interactionId: number };
    const seen: Seen[] = [];
    // No function here may have a name: the compiler would mark it with a helper the page does not have.
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Timed[])
        if (entry.interactionId > 0) seen.push({ ms: entry.duration, atMs: entry.startTime });
    }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
    Object.assign(window, { answersSeen: seen });
  });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  return page;
}

async function largestPaintMs(browser: Browser, address: string): Promise<number> {
  const page = await slowPage(browser);
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.waitForTimeout(500);
  const ms = await page.evaluate(
    () =>
      new Promise<number>((done) => {
        new PerformanceObserver((list) => done(list.getEntries().at(-1)!.startTime)).observe({
          type: 'largest-contentful-paint',
          buffered: true,
        });
      }),
  );
  await page.context().close();
  return ms;
}

/** The longest answer of each try: a press is several events, and a person waits for the last. */
async function answersMs(browser: Browser, address: string, { path, ready, press, then }: Doing): Promise<number[]> {
  const page = await slowPage(browser);
  await page.goto(address + path, { waitUntil: 'networkidle' });
  await page.waitForTimeout(1500);
  await ready?.(page);
  await page.waitForTimeout(500);
  const times: number[] = [];
  for (let tried = 0; tried < TRIES; tried += 1) {
    const begunMs = await page.evaluate(() => performance.now());
    await press(page);
    await page.waitForTimeout(600);
    times.push(Math.max(LEAST_MS, ...(await answersSince(page, begunMs))));
    await then?.(page);
    await page.waitForTimeout(300);
  }
  await page.context().close();
  return times;
}

/** How long what was done since a moment took to be answered, ms. What was done before may be told only now, and does not count. */
function answersSince(page: Page, begunMs: number): Promise<number[]> {
  return page.evaluate(
    (begun) =>
      (window as unknown as { answersSeen: Seen[] }).answersSeen
        .filter(({ atMs }) => atMs >= begun)
        .map(({ ms }) => ms),
    begunMs,
  );
}
