import { serveSite } from '@/app/commands/serve-site';
import { isSiteStale, siteFolder } from '@/app/commands/build-site';
import { launchChromium } from '../browser/chromium';

const SCRIPT = `gas: air
descend to 30 m at 18 m/min
stay 15 min
ascend to 18 m at 9 m/min
stay 25 min
ascend to 5 m at 9 m/min
stay 10 min
ascend to surface at 3 m/min
`;
const FRAMES = 240;

export interface DragFrame {
  readonly name: 'drag-frame';
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly samples: number;
}

/**
 * A point of an hour's dive dragged up and down on the desk, in a real browser: from each pointer event to the end of
 * the frame that paints it. The site has to be built.
 */
export async function dragFrame(): Promise<DragFrame> {
  if (isSiteStale()) throw new Error('the site is not built, or older than its sources: run npm run build first');
  const { address, close } = await serveSite(siteFolder, 0);
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(`${address}/desk/`, { waitUntil: 'networkidle' });
    await page.getByRole('textbox', { name: 'Dive script' }).fill(SCRIPT);
    const point = page.getByRole('slider', { name: /^Point 2:/ });
    const box = (await point.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 8);
    const times = await page.evaluate(
      async ({ x, y, frames }) => {
        const target = document.elementFromPoint(x, y)!;
        const painted = new MessageChannel();
        const spans: number[] = [];
        for (let i = 0; i < frames; i += 1) {
          await new Promise<void>((done) => {
            requestAnimationFrame(() => {
              const start = performance.now();
              const clientY = y - Math.abs((i % 60) - 30) * 3 - 8;
              target.dispatchEvent(new PointerEvent('pointermove', { bubbles: true, pointerId: 1, button: -1, buttons: 1, clientX: x, clientY, isPrimary: true }));
              // A frame's work is over once a message posted from its last callback is heard.
              requestAnimationFrame(() => undefined);
              painted.port1.onmessage = () => {
                spans.push(performance.now() - start);
                done();
              };
              painted.port2.postMessage(0);
            });
          });
        }
        return spans;
      },
      { x, y, frames: FRAMES },
    );
    await page.mouse.up();
    const sorted = times.slice(20).sort((one, other) => one - other);
    const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
    return { name: 'drag-frame', p50Ms: at(0.5), p95Ms: at(0.95), samples: sorted.length };
  } finally {
    await browser.close();
    await close();
  }
}
