import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import { qrPicture } from '@/lib/files/links/qr';
import { valueOf } from '../../read';

/** The dark squares a path of unit squares covers. */
function darkOf(path: string, size: number): boolean[][] {
  const dark = Array.from({ length: size }, () => Array<boolean>(size).fill(false));
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let i = 0; i < Number(width); i += 1) dark[Number(y)]![Number(x) + i] = true;
  }
  return dark;
}

describe('the QR code of a link', () => {
  const { size, path, caption } = valueOf(qrPicture('https://example.org/halftime/desk/#1.abcDEF_-0123456789'));
  const dark = darkOf(path, size);

  it('has the finder patterns, timing patterns and quiet zone of ISO/IEC 18004', () => {
    const modules = size - 8;
    expect((modules - 17) % 4).toBe(0);
    const finder = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111'];
    for (const [left, top] of [
      [4, 4],
      [4 + modules - 7, 4],
      [4, 4 + modules - 7],
    ] as const) {
      const seen = finder.map((_, y) => finder.map((__, x) => (dark[top + y]![left + x] ? '1' : '0')).join(''));
      expect(seen).toEqual(finder);
    }
    for (let i = 8; i < modules - 8; i += 1) {
      expect(dark[4 + 6]![4 + i]).toBe(i % 2 === 0);
      expect(dark[4 + i]![4 + 6]).toBe(i % 2 === 0);
    }
    for (let i = 0; i < size; i += 1)
      for (let edge = 0; edge < 4; edge += 1)
        expect(dark[edge]![i] || dark[i]![edge] || dark[size - 1 - edge]![i]).toBe(false);
  });

  it('brings the caution along', () => {
    expect(caption).toBe(cautions.general);
  });

  it('holds a link of 2953 bytes, and refuses a longer one in words', () => {
    expect(qrPicture('x'.repeat(2953)).ok).toBe(true);
    expect(qrPicture('x'.repeat(2954))).toMatchObject({
      ok: false,
      what: 'The link has 2954 characters; a QR code holds at most 2953.',
    });
  });
});
