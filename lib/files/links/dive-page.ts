import { isStepLink } from './step-mark';

/**
 * A dive as a page of its own: one HTML file that shows it without anything else. The page is made once, when the site is
 * built, with places for the dive; what is put there is the same text that a link carries behind its #.
 */

/** The ids and attributes by which a page's places are known, to whoever makes the page, fills it and reads it. */
export const DIVE_PLACE = 'halftime-dive';
const PLACE = new RegExp(`(<script type="text/plain" id="${DIVE_PLACE}">)([^<]*)(</script>)`);
const TITLE = /<title>[^<]*<\/title>/;
const ROOT = /<html lang="en-GB"[^>]*>/;
/** What can be read where no script runs. */
const PLAIN = /(<pre data-place="script">)[^<]*(<\/pre>)/;

/** No page of a dive is longer, in bytes: its code, a link's worth of dive, and the script to read. */
export const LONGEST_PAGE = 1_000_000;

export interface DiveOnPage {
  readonly title: string;
  /** What a link to the dive carries behind its #. */
  readonly fragment: string;
  /** The script of the dive, to be read where no script of the page runs. */
  readonly script: string;
  readonly units: 'metric' | 'imperial';
  readonly theme: string;
}

/** Fills a page's places. Throws where it has none of them. */
export function writeDivePage(page: string, { title, fragment, script, units, theme }: DiveOnPage): string {
  for (const place of [PLACE, TITLE, ROOT, PLAIN])
    if (!place.test(page)) throw new Error(`A page of a dive has no place for ${place.source}.`);
  return page
    .replace(ROOT, () => `<html lang="en-GB" data-theme="${escapedText(theme)}" data-units="${units}">`)
    .replace(TITLE, () => `<title>${escapedText(title)} · Halftime</title>`)
    .replace(PLAIN, (_, open: string, close: string) => `${open}${escapedText(script)}${close}`)
    .replace(PLACE, (_, open: string, __, close: string) => `${open}${escapedText(fragment)}${close}`);
}

/** What a link to the dive of a page would carry behind its #, unread; undefined where the text is no page of a dive. */
export function readDivePage(text: string): string | undefined {
  const carried = PLACE.exec(text)?.[2]?.trim();
  return carried && !isStepLink(carried) ? carried : undefined;
}

/** Text as it stands in HTML, between tags or in an attribute. */
export function escapedText(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
