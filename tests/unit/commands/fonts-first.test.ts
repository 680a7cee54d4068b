import { describe, expect, it } from 'vitest';
import { firstFaces, withFontsFirst } from '@/app/commands/site/fonts-first';

const SANS = '_next/static/media/source-sans-3-latin-wght-normal.319-55.woff2';
const SERIF = '_next/static/media/source-serif-4-latin-wght-normal.2bb.woff2';

describe('fonts asked for first', () => {
  it('are the upright faces of text and headings', () => {
    expect(
      firstFaces([
        SANS,
        SERIF,
        '_next/static/media/source-sans-3-latin-wght-italic.0zg.woff2',
        '_next/static/media/Temml.2b.woff2',
        'index.html',
      ]),
    ).toEqual([SANS, SERIF]);
  });

  it('stand before the first style sheet, once', () => {
    const page =
      '<html><head><title>x</title><link rel="stylesheet" href="/a.css"/><link rel="stylesheet" href="/b.css"/></head></html>';
    expect(withFontsFirst(page, [SANS])).toBe(
      `<html><head><title>x</title><link rel="preload" href="/${SANS}" as="font" type="font/woff2" crossorigin=""/><link rel="stylesheet" href="/a.css"/><link rel="stylesheet" href="/b.css"/></head></html>`,
    );
  });
});
