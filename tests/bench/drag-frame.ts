import { serveSite } from '@/app/commands/serve-site';
import { isSiteStale, siteFolder } from '@/app/commands/build-site';
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
const FRAMES = 240;
const WARM_UP = 20;

export interface DragFrame {
  readonly name: string;
  /** From a pointer event that changed the dive to the end of the frame that paints the change, ms. */
  readonly p50Ms: number;
  readonly p95Ms: number;
  /** The longest task while dragging, ms; 0 where none took 50 ms. */
  readonly longestTaskMs: number;
  /** Frames in which the dive changed. */
  readonly samples: number;
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
    await page.getByRole('textbox', { name: 'Dive script' }).fill(script);
    const point = page.getByRole('slider', { name: /^Point 2:/ });
    const box = (await point.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 8);
    const { spans, longestTaskMs } = await page.evaluate(
      async ({ x, y, frames, warmUp }) => {
        const target = document.elementFromPoint(x, y)!;
        const painted = new MessageChannel();
        const script = document.querySelector('textarea')!;
        const spans: number[] = [];
        let longestTaskMs = 0;
        const observer = new PerformanceObserver((list) => {
          for (const { duration } of list.getEntries()) longestTaskMs = Math.max(longestTaskMs, duration);
        });
        for (let i = 0; i < frames; i += 1) {
          if (i === warmUp) observer.observe({ type: 'longtask' });
          const before = script.value;
          await new Promise<void>((done) => {
            requestAnimationFrame(() => {
              const start = performance.now();
              const clientY = y - Math.abs((i % 60) - 30) * 3 - 8;
              target.dispatchEvent(new PointerEvent('pointermove', { bubbles: true, pointerId: 1, button: -1, buttons: 1, clientX: x, clientY, isPrimary: true }));
              // A frame's work is over once a message posted from its last callback is heard.
              requestAnimationFrame(() => undefined);
              painted.port1.onmessage = () => {
                // The pointer moves finer than depths are set: many a move changes nothing, and is not counted.
                if (i >= warmUp && script.value !== before) spans.push(performance.now() - start);
                done();
              };
              painted.port2.postMessage(0);
            });
          });
        }
        observer.disconnect();
        return { spans, longestTaskMs };
      },
      { x, y, frames: FRAMES, warmUp: WARM_UP },
    );
    await page.mouse.up();
    const sorted = spans.sort((one, other) => one - other);
    const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
    return { name, p50Ms: at(0.5), p95Ms: at(0.95), longestTaskMs, samples: sorted.length };
  } finally {
    await browser.close();
    await close();
  }
}
