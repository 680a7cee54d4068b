/** A figure with a metric unit behind it. */
const METRIC = /(?<![\w.])\d+(?:[.,]\d+)?[\s\u00a0](?:m|m\/min|bar|g\/L|L|L\/min)(?![\w/])|\bmetres?\b/;

/** Said in both units. */
const BOTH = /\bft\b|\bpsi\b/;

/** What the trade counts alike wherever it dives: the pressure of oxygen is limited in bar, the density of gas in g/L. */
function withoutTradeUnits(text: string): string {
  const ofOxygen = /oxygen|O₂|operating depth|^1\.[46] bar$/i.test(text);
  return text.replace(/[\d.]+ g\/L/g, '').replace(ofOxygen ? /[\d.]+ bar/g : '', '');
}

/** Texts and boxes of the page with a metric figure that stands alone. */
export function metricLeft(): string[] {
  const left: string[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node as HTMLElement;
    // What a file's columns are is told in the file's own units; a lesson holds both systems, and shows one.
    if (element.closest('textarea, code, style, script, [aria-labelledby="columns"], [data-in="metric"]')) continue;
    const own =
      element instanceof HTMLInputElement
        ? element.value
        : [...element.childNodes]
            .filter(({ nodeType }) => nodeType === 3)
            .map((text) => text.textContent)
            .join('');
    if (METRIC.test(withoutTradeUnits(own)) && !BOTH.test(own)) left.push(own.trim());
  }
  return left;
}
