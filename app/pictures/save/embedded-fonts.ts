/**
 * Font faces of the page as style rules with the fonts in them, so that a picture keeps its letters wherever it is
 * opened: those of the first family in `family`, upright, that have any of the letters in `text`. A face that can't be
 * fetched is left out, and the next family in the list is used.
 */
export async function embeddedFonts(family: string, text: string): Promise<string> {
  const first = unquoted(family.split(',')[0] ?? '');
  const letters = new Set(Array.from(text, (letter) => letter.codePointAt(0)!));
  const wanted = facesOf(first).filter(({ rule }) => hasAny(rule.style.getPropertyValue('unicode-range'), letters));
  const embedded = await Promise.all(wanted.map(embed));
  return embedded.join('');
}

interface Face {
  readonly rule: CSSFontFaceRule;
  readonly sheetAddress: string;
}

function facesOf(family: string): Face[] {
  return Array.from(document.styleSheets).flatMap((sheet) =>
    rulesOf(sheet).flatMap((rule) => {
      if (!(rule instanceof CSSFontFaceRule)) return [];
      const { style } = rule;
      const upright = !/italic|oblique/.test(style.getPropertyValue('font-style'));
      return upright && unquoted(style.getPropertyValue('font-family')) === family
        ? [{ rule, sheetAddress: sheet.href ?? document.baseURI }]
        : [];
    }),
  );
}

function rulesOf(sheet: CSSStyleSheet): CSSRule[] {
  try {
    return Array.from(sheet.cssRules);
  } catch {
    // A style sheet of another origin, such as a browser extension's.
    return [];
  }
}

function unquoted(name: string): string {
  return name.trim().replace(/^["']|["']$/g, '');
}

/** Whether a CSS unicode-range holds any of the letters; no range holds all. */
function hasAny(range: string, letters: ReadonlySet<number>): boolean {
  if (range === '') return true;
  const spans = range.split(',').map((span): readonly [number, number] => {
    const [from = '', to = from] = span.trim().replace(/^U\+/i, '').split('-');
    return [parseInt(from.replaceAll('?', '0'), 16), parseInt(to.replaceAll('?', 'F'), 16)];
  });
  return [...letters].some((letter) => spans.some(([from, to]) => letter >= from && letter <= to));
}

async function embed({ rule, sheetAddress }: Face): Promise<string> {
  const { style } = rule;
  const source = /url\(["']?([^"')]+)["']?\)/.exec(style.getPropertyValue('src'))?.[1];
  if (source === undefined) return '';
  try {
    const response = await fetch(new URL(source, sheetAddress));
    if (!response.ok) return '';
    const font = await dataAddress(await response.blob());
    return `@font-face{font-family:${style.getPropertyValue('font-family')};font-weight:${style.getPropertyValue('font-weight')};unicode-range:${style.getPropertyValue('unicode-range') || 'U+0-10FFFF'};src:url(${font}) format("woff2")}`;
  } catch {
    return '';
  }
}

function dataAddress(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve((reader.result as string).replace(/^data:[^;,]*/, 'data:font/woff2'));
    reader.onerror = () => reject(reader.error ?? new Error('the font could not be read'));
    reader.readAsDataURL(blob);
  });
}
