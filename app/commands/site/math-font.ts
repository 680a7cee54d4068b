import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import subsetFont from 'subset-font';

/** Characters from the one to the other, both within. */
const span = (first: number, last: number): string =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index)).join('');

/**
 * What formulas are written with: Latin and Greek, upright and slanted, figures raised and lowered, arrows, operators, and
 * what brackets and roots are built of. Anything else in a formula of a lesson of one's own is set in a face of the machine's.
 */
export const MATH_LETTERS = [
  span(0x20, 0x7e),
  span(0xa0, 0xff),
  span(0x391, 0x3c9),
  '–—‘’“”…′″',
  span(0x2061, 0x2064),
  span(0x2070, 0x2079),
  span(0x2080, 0x2089),
  'ℎℓ∂∆∇←↑→↓↔⇐⇒⇔∈∏∑−∓∗√∝∞∫∼≈≠≡≤≥≪≫⋅⋮⋯⌈⌉⌊⌋⎧⎨⎩⎪⎫⎬⎭',
  span(0x1d434, 0x1d467),
  span(0x1d6e2, 0x1d71b),
].join('');

/** The face formulas are set in has 2,600 letters and weighs 270 kB; of it the site keeps what formulas are written with. */
export async function keepMathLetters(folder: string, files: readonly string[]): Promise<void> {
  for (const file of files.filter((name) => /noto-sans-math.*\.woff2$/.test(name))) {
    const path = join(folder, file);
    writeFileSync(path, await subsetFont(readFileSync(path), MATH_LETTERS, { targetFormat: 'woff2' }));
  }
}
