import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rgb } from 'd3';
import { describe, expect, it } from 'vitest';

/** Relative luminance and contrast ratio as defined in WCAG 2.2, "relative luminance" and "contrast ratio". */
function luminance(colour: string): number {
  const { r, g, b } = rgb(colour);
  const [red, green, blue] = [r, g, b].map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const css = readFileSync(fileURLToPath(new URL('../../app/tokens.css', import.meta.url)), 'utf8');
const coloursIn = (part: string) =>
  Array.from(part.matchAll(/--([\w-]+): light-dark\((#\w+), (#\w+)\)/g), ([, name, light, dark]): [string, Themed] => [
    name!,
    { light: light!, dark: dark! },
  ]);
interface Themed {
  readonly light: string;
  readonly dark: string;
}
const [usual = '', more = ''] = css.split('@media (prefers-contrast: more)');
const tokens = new Map(coloursIn(usual));
/** As whoever asks for more contrast has them. */
const strong = new Map([...tokens, ...coloursIn(more)]);
const colour = (name: string, theme: 'light' | 'dark', among = tokens): string => {
  const token = among.get(name);
  if (!token) throw new Error(`There is no colour called --${name} in app/tokens.css.`);
  return token[theme];
};

const papers = ['paper', 'paper-raised', 'paper-sunk'];
const washes = ['gas-wash', 'stop-wash', 'rule-wash'];

describe('contrast', () => {
  it('is 21 between black and white and 4.48 for #777 on white, as WCAG’s own examples have it', () => {
    expect(contrast('#000', '#fff')).toBeCloseTo(21, 6);
    expect(contrast('#777', '#fff')).toBeCloseTo(4.48, 2);
  });

  it.each(['light', 'dark'] as const)(
    'is more where more is asked for, in the %s theme: words AAA, lines 3 to 1',
    (theme) => {
      expect(coloursIn(more).length).toBeGreaterThan(5);
      for (const under of ['paper', 'paper-raised', 'paper-sunk']) {
        for (const over of ['ink', 'ink-soft', 'gas', 'stop', 'rule'])
          expect
            .soft(contrast(colour(over, theme, strong), colour(under, theme, strong)), over)
            .toBeGreaterThanOrEqual(7);
        for (const over of ['edge', 'hairline'])
          expect
            .soft(contrast(colour(over, theme, strong), colour(under, theme, strong)), over)
            .toBeGreaterThanOrEqual(3);
      }
    },
  );

  describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
    it.each([...papers, ...washes])('readings in ink on %s reach AAA, 7 to 1', (under) => {
      expect(contrast(colour('ink', theme), colour(under, theme))).toBeGreaterThanOrEqual(7);
    });

    it.each(
      ['ink-soft', 'gas', 'stop', 'rule', 'rate'].flatMap((over) => papers.map((under) => [over, under] as const)),
    )('words in %s on %s reach AA, 4.5 to 1', (over, under) => {
      expect(contrast(colour(over, theme), colour(under, theme))).toBeGreaterThanOrEqual(4.5);
    });

    it.each(['gas', 'stop', 'rule'])('%s on its own wash reaches AA', (hue) => {
      expect(contrast(colour(hue, theme), colour(`${hue}-wash`, theme))).toBeGreaterThanOrEqual(4.5);
    });

    it.each(['edge', 'focus'].flatMap((over) => papers.map((under) => [over, under] as const)))(
      '%s on %s can be told apart as a shape, 3 to 1',
      (over, under) => {
        expect(contrast(colour(over, theme), colour(under, theme))).toBeGreaterThanOrEqual(3);
      },
    );
  });
});
