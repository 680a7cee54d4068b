import type { Page } from 'playwright-core';
import { routes } from '@/app/parts/routes';

/** A dive of a class's own, told apart from the ready ones. */
export const REEF = `# A reef at eighteen metres
water: salt
gas: 32%

descend to 18 m at 18 m/min
stay 30 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;

export const script = (page: Page) => page.getByRole('textbox', { name: 'Dive script' });

/** The desk is there, and what was kept of it is on it. */
export async function restored(page: Page): Promise<void> {
  await page.locator('[data-kept="kept"]').waitFor({ state: 'attached' });
}

export async function openDesk(page: Page): Promise<void> {
  await page.goto(routes.desk.path);
  await restored(page);
}

/** Opens the menu of a picture on the desk. */
export async function openTools(page: Page, title: string): Promise<void> {
  await page.getByRole('button', { name: `Tools of ${title}` }).click();
}

/** Waits until the desk is on the shelf with this script. */
export async function written(page: Page, words: string): Promise<void> {
  await page.waitForFunction(
    (text) =>
      new Promise<boolean>((resolve) => {
        const opening = indexedDB.open('halftime.desk');
        opening.onsuccess = () => {
          const reading = opening.result.transaction('records').objectStore('records').get('desk');
          reading.onsuccess = () => {
            opening.result.close();
            resolve((reading.result as { script?: string } | undefined)?.script === text);
          };
        };
      }),
    words,
  );
}

/** The desk with the reef on it, written to the shelf. */
export async function deskWithReef(page: Page): Promise<void> {
  await openDesk(page);
  await script(page).fill(REEF);
  await written(page, REEF);
}

/** The link the desk is passed on as. */
export async function linkTo(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Pass on' }).click();
  const link = await page.getByRole('textbox', { name: 'Link' }).inputValue();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  return link;
}
