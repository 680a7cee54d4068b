import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { lab, rgb } from 'd3';
import { describe, expect, it } from 'vitest';

type Row = readonly [number, number, number];

/**
 * How colours look to someone without one kind of cone, in linear sRGB: Machado, Oliveira and Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, severity 1.0. From memory.
 */
const KINDS: Readonly<Record<string, readonly [Row, Row, Row]>> = {
  'every cone': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  'no long-wave cone (protanopia)': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'no middle-wave cone (deuteranopia)': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'no short-wave cone (tritanopia)': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** The transfer curve of sRGB, IEC 61966-2-1, and back. */
const linear = (channel: number) =>
  channel / 255 <= 0.04045 ? channel / 255 / 12.92 : ((channel / 255 + 0.055) / 1.055) ** 2.4;
const coded = (share: number) => 255 * (share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055);

function seenBy(colour: string, matrix: readonly [Row, Row, Row]): string {
  const { r, g, b } = rgb(colour);
  const [red, green, blue] = [linear(r), linear(g), linear(b)];
  const [long, middle, short] = matrix.map(([x, y, z]) =>
    coded(Math.min(1, Math.max(0, x * red + y * green + z * blue))),
  ) as [number, number, number];
  return rgb(long, middle, short).formatHex();
}

/** Distance in CIE L*a*b* (CIE 1976). About 2.3 is just seen side by side (Mahy et al. 1994, from memory). */
function apart(one: string, other: string): number {
  const [a, b] = [lab(one), lab(other)];
  return Math.hypot(a.l - b.l, a.a - b.a, a.b - b.b);
}

/** Six times what is just seen: thin lines, apart from each other, on a poor projector. Our own choice. */
const CLEARLY = 15;

const css = readFileSync(fileURLToPath(new URL('../../app/tokens.css', import.meta.url)), 'utf8');
const colour = (name: string, theme: 'light' | 'dark'): string => {
  const [, light, dark] = new RegExp(`--${name}: light-dark\\((#\\w+), (#\\w+)\\)`).exec(css) ?? [];
  if (!light || !dark) throw new Error(`There is no colour called --${name} in app/tokens.css.`);
  return theme === 'light' ? light : dark;
};

/** What lines and marks of a picture are drawn in. Washes lie behind words or are hatched, and need no telling apart. */
const DRAWN = ['ink', 'gas', 'stop', 'rule'];
const PAIRS = DRAWN.flatMap((one, index) => DRAWN.slice(index + 1).map((other) => [one, other] as const));

describe.each(Object.entries(KINDS))('to an eye with %s', (kind, matrix) => {
  it('greys stay as they are, as the matrices promise', () => {
    for (const row of matrix) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 5);
  });

  it.each(['light', 'dark'] as const)('what pictures are drawn in is told apart in the %s theme', (theme) => {
    const close = PAIRS.filter(
      ([one, other]) => apart(seenBy(colour(one, theme), matrix), seenBy(colour(other, theme), matrix)) < CLEARLY,
    );
    expect(close).toEqual([]);
  });

  it.runIf(/protan|deuteran/.test(kind))(
    'a red and a green that are far apart to most come close, so the check above could fail',
    () => {
      const [red, green] = ['#82322d', '#465a3c'];
      expect(apart(red, green)).toBeGreaterThan(40);
      expect(apart(seenBy(red, matrix), seenBy(green, matrix))).toBeLessThan(CLEARLY);
    },
  );
});
