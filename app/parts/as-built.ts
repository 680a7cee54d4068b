import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { ReactElement } from 'react';
import type { renderToStaticMarkup } from 'react-dom/server';
import { builtTexts } from './built-texts';

/** The page builder keeps this from parts that it renders as data; what is still by nature can be drawn by it all the same. */
const drawer = createRequire(join(process.cwd(), 'package.json'))('react-dom/server') as {
  renderToStaticMarkup: typeof renderToStaticMarkup;
};

/**
 * Draws what never changes in the browser and lays it down for `<AsBuilt name>`, which puts it into the page: without a
 * second copy as data, which such a text would otherwise bring along. For build time only. Hooks cannot be used in it.
 */
export function layDown(name: string, still: ReactElement): string {
  return layDownHtml(name, drawer.renderToStaticMarkup(still));
}

/** The same for a text that is HTML already. */
export function layDownHtml(name: string, html: string): string {
  builtTexts().set(name, html);
  return name;
}
