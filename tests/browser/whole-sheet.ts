import type { Page } from 'playwright-core';

export const TOGETHER = [
  '[data-picture="profile"]',
  '[data-picture="chase"]',
  '[data-reading="no-stop"]',
  '[data-reading="ceiling"]',
  '[data-reading="required-stop"]',
  '[data-reading="rate"]',
  '[data-part="time"]',
  '[data-part="caution"]',
];

/** What of it is not wholly in the window, or lies under something; and the share of the window the pictures have, %. */
export async function sheet(
  page: Page,
  together = TOGETHER,
): Promise<{ faults: string[]; share: number; scrolls: number }> {
  return page.evaluate((selectors) => {
    const faults: string[] = [];
    let area = 0;
    for (const selector of selectors) {
      const element = document.querySelector(selector);
      const box = element?.getBoundingClientRect();
      if (!element || !box || box.width === 0) {
        faults.push(`${selector} is not there`);
        continue;
      }
      if (selector.includes('picture')) area += box.width * box.height;
      const inside =
        box.left >= -0.5 && box.top >= -0.5 && box.right <= innerWidth + 0.5 && box.bottom <= innerHeight + 0.5;
      if (!inside) faults.push(`${selector} is not wholly in the window`);
      for (const x of [0.02, 0.25, 0.5, 0.75, 0.98])
        for (const y of [0.05, 0.5, 0.95]) {
          const there = document.elementFromPoint(box.left + box.width * x, box.top + box.height * y);
          if (there && !element.contains(there) && !there.contains(element))
            faults.push(`${selector} lies under ${there.tagName} ${there.className}`);
        }
    }
    return {
      faults: [...new Set(faults)],
      share: (area / innerWidth / innerHeight) * 100,
      scrolls: document.documentElement.scrollHeight - innerHeight,
    };
  }, together);
}
