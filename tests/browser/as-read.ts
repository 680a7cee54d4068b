import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * A main screen as a screen reader is given it, from top to bottom. Each file in read-out/ is to be read as by someone
 * who can't see: where one changes, read it before taking it over with `-u`.
 */
export async function isAsRead(page: Page, name: string): Promise<void> {
  const main = page.locator('main');
  const given = (await main.ariaSnapshot())
    .replace(/^ *- \/url: .*\n?/gm, '')
    .replace(/in the class [2-9A-Z]{3} [2-9A-Z]{3}\./, 'in the class (its code).');
  // What a slider of our own says of its value; one of the browser's has it as it is typed.
  const values = await main
    .locator('[role="slider"][aria-valuetext]')
    .evaluateAll((found) => found.map((one) => [one.getAttribute('aria-label'), one.getAttribute('aria-valuetext')]));
  const text = values.reduce(
    (so, [label, value]) => so.replace(`slider "${label}"\n`, `slider "${label}": ${value}\n`),
    given,
  );
  await expect.soft(text).toMatchFileSnapshot(`read-out/${name}.txt`);
}
