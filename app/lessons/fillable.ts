import type { Filled } from '@/lib/lesson/expression/template';

/** A text set as HTML with places left in it for values, and what goes there. */
export interface Fillable {
  readonly html: string;
  readonly slots: readonly { readonly source: string; readonly format: string | undefined }[];
}

/* Two characters of the private use area: no text has them, and no Markdown touches them. */
const OPEN = '\uE000';
const CLOSE = '\uE001';
const TOKEN = /\uE000(\d+)\uE001/g;

/** The mark of a slot in a text that is yet to be set. */
export function slotToken(index: number): string {
  return `${OPEN}${index}${CLOSE}`;
}

/** A text without the characters that mark slots. */
export function withoutTokens(text: string): string {
  return text.replace(/[\uE000\uE001]/g, '');
}

/** Puts values into a text that has been set, each in both systems of units; a screen shows the one that is read. */
export function fillHtml({ html }: Pick<Fillable, 'html'>, values: readonly Filled[]): string {
  return html.replace(TOKEN, (_, index: string) => {
    const value = values[Number(index)];
    return value ? valueHtml(value) : '–';
  });
}

/** A value as HTML: never broken between its number and its unit. */
export function valueHtml({ metric, imperial }: Filled): string {
  return amountHtml(kept(metric), kept(imperial));
}

/** The same of two texts that are HTML already. */
export function amountHtml(one: string, other: string): string {
  if (one === other) return `<span class="amount">${one}</span>`;
  return `<span class="amount" data-in="metric">${one}</span><span class="amount" data-in="imperial">${other}</span>`;
}

function kept(text: string): string {
  const short = text.length <= 12 ? text.replaceAll(' ', '\u00a0') : text;
  return short.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
