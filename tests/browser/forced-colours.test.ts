import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { drawn } from './drawn';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

type Colour = readonly [red: number, green: number, blue: number];

/** The colours of a thing as it is painted, the commonest first, each with its share of the pixels. */
async function painted(page: Page, thing: Locator): Promise<{ colour: Colour; share: number }[]> {
  const png = (await thing.screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d')!;
    context.drawImage(bitmap, 0, 0);
    const { data: pixels } = context.getImageData(0, 0, bitmap.width, bitmap.height);
    const counts = new Map<string, number>();
    for (let at = 0; at < pixels.length; at += 4) {
      const key = `${pixels[at]} ${pixels[at + 1]} ${pixels[at + 2]}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return [...counts]
      .sort(([, one], [, other]) => other - one)
      .map(([key, count]) => ({
        colour: key.split(' ').map(Number) as unknown as [number, number, number],
        share: count / (pixels.length / 4),
      }));
  }, png);
}

/** Relative luminance, WCAG 2.2. */
function luminance(colour: Colour): number {
  const [red, green, blue] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio, WCAG 2.2. */
function contrast(one: Colour, other: Colour): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

/** The contrast of what is written on a thing with its ground: of the strongest colour that is more than a speck. */
async function writtenContrast(page: Page, thing: Locator): Promise<number> {
  const [ground, ...others] = await painted(page, thing);
  return Math.max(
    ...others.filter(({ share }) => share > 0.004).map(({ colour }) => contrast(ground!.colour, colour)),
    1,
  );
}

/** The least contrast of words, and of lines that mean something (WCAG 2.2, 1.4.3 and 1.4.11). */
const WORDS = 4.5;
const LINES = 3;

describe.each(drawn(['light', 'dark'] as const, 1))('on a machine that forces its colours, %s,', (colorScheme) => {
  it('buttons can be read, and gas, limit and paper are apart, as they are painted', async () => {
    const { page } = await visit({ forcedColors: 'active', colorScheme });
    await arrive(page, '/');
    const begin = page.getByRole('link', { name: 'Watch a unit ask for a stop' }).first();
    expect.soft(await writtenContrast(page, begin), 'the way to the demonstration').toBeGreaterThanOrEqual(WORDS);

    await arrive(page, lessonPath('04-no-stop-time', 'on-arrival'));
    for (const name of ['Go on', 'Back', 'Show what the model says'])
      expect
        .soft(await writtenContrast(page, page.getByRole('button', { name, exact: true })), name)
        .toBeGreaterThanOrEqual(WORDS);

    await arrive(page, '/desk/');
    for (const name of ['Play', 'Present', 'Steer by hand', 'Script'])
      expect
        .soft(await writtenContrast(page, page.getByRole('button', { name, exact: true })), name)
        .toBeGreaterThanOrEqual(WORDS);
    for (const reading of ['depth', 'no-stop', 'required-stop'])
      expect
        .soft(await writtenContrast(page, page.locator(`[data-reading="${reading}"]`)), reading)
        .toBeGreaterThanOrEqual(WORDS);

    // What the page says its meanings are, each as it is painted on paper: such a colour may let the ground through.
    const shown = async (name: string) => {
      await page.evaluate((token) => {
        const probe = document.createElement('div');
        probe.id = 'probe';
        document.querySelector('main')!.append(probe);
        Object.assign(probe.style, {
          position: 'fixed',
          inset: '0 auto auto 0',
          inlineSize: '20px',
          blockSize: '20px',
          zIndex: '99',
          forcedColorAdjust: 'none',
          background: `linear-gradient(var(${token}), var(${token})) var(--paper)`,
        });
      }, name);
      const probe = page.locator('#probe');
      const { colour } = (await painted(page, probe))[0]!;
      await probe.evaluate((element) => element.remove());
      return colour;
    };
    const [ofPaper, ofGas, ofStop] = [await shown('--paper'), await shown('--gas'), await shown('--stop')];
    expect.soft(contrast(ofStop, ofPaper), 'limit on paper').toBeGreaterThanOrEqual(LINES);
    expect.soft(contrast(ofGas, ofPaper), 'gas on paper').toBeGreaterThanOrEqual(LINES);
    expect(ofStop, 'gas and limit').not.toEqual(ofGas);
    const inPicture = (await painted(page, page.locator('[data-picture="chase"]'))).map(({ colour }) => String(colour));
    expect(inPicture).toContain(String(ofGas));
    expect(inPicture).toContain(String(ofStop));
  }, 90_000);
});
