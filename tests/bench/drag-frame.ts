import { loadavg } from 'node:os';
import { serveSite } from '@/app/commands/serve/serve-site';
import { isSiteStale, siteFolder } from '@/app/commands/site/build-site';
import { launchChromium } from '../browser/chromium';

const HOUR = `gas: air
descend to 30 m at 18 m/min
stay 15 min
ascend to 18 m at 9 m/min
stay 25 min
ascend to 5 m at 9 m/min
stay 10 min
ascend to surface at 3 m/min
`;
const DAY = `gas: air
descend to 30 m at 18 m/min
stay 18 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
interval 45 min
descend to 24 m at 18 m/min
stay 25 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
interval 45 min
descend to 15 m at 18 m/min
stay 30 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;
/** A drag of ten seconds. In the first two the browser still compiles what it runs. */
const FRAMES = 600;
const FIRST = 120;

export interface DragFrame {
  readonly name: string;
  /** From a pointer event that changed the dive to the end of the frame that paints it in the picture under the hand, ms. */
  readonly p50Ms: number;
  readonly p95Ms: number;
  /** From one such frame to the next, with all that follows the hand in between, ms: 16.7 where sixty fit in a second. */
  readonly paceP95Ms: number;
  /** The longest task, ms; 0 where none took 50 ms. */
  readonly longestTaskMs: number;
  /** Frames in which the dive changed. */
  readonly samples: number;
  /** The first two seconds by themselves, and the rest. */
  readonly firstP95Ms: number;
  readonly laterP95Ms: number;
  /** What else this machine was at, processes: figures taken beside other work are too high. */
  readonly load: number;
}

/** An hour's dive. */
export const dragFrame = { name: 'drag-frame', run: () => dragged('drag-frame', HOUR) };
/** Three hours and three dives. */
export const dragDay = { name: 'drag-day', run: () => dragged('drag-day', DAY) };

/**
 * A point of a dive dragged up and down on the desk, in a real browser: from each pointer event to the end of the frame
 * that paints it. The site has to be built.
 */
async function dragged(name: string, script: string): Promise<DragFrame> {
  if (isSiteStale()) throw new Error('the site is not built, or older than its sources: run npm run build first');
  const { address, close } = await serveSite(siteFolder, 0);
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(`${address}/desk/`, { waitUntil: 'networkidle' });
    // On a first visit the browser fetches the whole site to keep it, once the page is at rest.
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.getByRole('textbox', { name: 'Dive script' }).fill(script);
    const point = page.getByRole('slider', { name: /^Point 1$/ });
    const box = (await point.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 8);
    const { spans, paces, longestTaskMs } = await page.evaluate(
      async ({ x, y, frames, firstFrames }) => {
        const target = document.elementFromPoint(x, y)!;
        const slider = target.closest('[role=slider]')!;
        const begun = performance.now();
        const spans: [first: number[], later: number[]] = [[], []];
        const paces: number[] = [];
        let last: number | undefined;
        let longestTaskMs = 0;
        const observer = new PerformanceObserver((list) => {
          for (const { startTime, duration } of list.getEntries())
            if (startTime >= begun) longestTaskMs = Math.max(longestTaskMs, duration);
        });
        observer.observe({ type: 'longtask' });
        for (let i = 0; i < frames; i += 1) {
          const before = slider.getAttribute('aria-valuenow');
          await new Promise<void>((done) => {
            requestAnimationFrame(() => {
              const start = performance.now();
              if (last !== undefined && i > firstFrames) paces.push(start - last);
              last = start;
              const clientY = y - Math.abs((i % 60) - 30) * 3 - 8;
              target.dispatchEvent(
                new PointerEvent('pointermove', {
                  bubbles: true,
                  pointerId: 1,
                  button: -1,
                  buttons: 1,
                  clientX: x,
                  clientY,
                  isPrimary: true,
                }),
              );
              // Asked for in a frame and before all else, it is done once the frame is: what follows the hand waits behind it.
              void scheduler.postTask(
                () => {
                  // The pointer moves finer than depths are set: many a move changes nothing, and is not counted.
                  if (slider.getAttribute('aria-valuenow') !== before)
                    spans[i < firstFrames ? 0 : 1].push(performance.now() - start);
                  done();
                },
                { priority: 'user-blocking' },
              );
            });
          });
        }
        // Long tasks are told a little after they were.
        await new Promise((told) => setTimeout(told, 200));
        observer.disconnect();
        return { spans, paces, longestTaskMs };
      },
      { x, y, frames: FRAMES, firstFrames: FIRST },
    );
    await page.mouse.up();
    const [first, later] = spans;
    const all = [...first, ...later];
    return {
      name,
      p50Ms: shareOf(all, 0.5),
      p95Ms: shareOf(all, 0.95),
      paceP95Ms: shareOf(paces, 0.95),
      longestTaskMs,
      samples: all.length,
      firstP95Ms: shareOf(first, 0.95),
      laterP95Ms: shareOf(later, 0.95),
      load: loadavg()[0]!,
    };
  } finally {
    await browser.close();
    await close();
  }
}

/** The value that so great a share of all stays below. */
function shareOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
}
