import type { Page } from 'playwright-core';
import type { browserVisits } from './visit';

/** A page of its own is small enough for a mail, and for the slowest stick. */
export const MOST_BYTES = 400_000;

/** A visit without a network that notes what is asked for and what the page’s policy refuses. */
export async function cutOff(visit: ReturnType<typeof browserVisits>) {
  const { page, complaints } = await visit({ offline: true });
  const wrong: string[] = [];
  await page.exposeFunction('noteRefused', (what: string) => void wrong.push(what));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
      (window as unknown as { noteRefused: (what: string) => void }).noteRefused(`${effectiveDirective} ${blockedURI}`),
    );
  });
  page.on('request', (request) => {
    if (!/^(blob|data|about):/.test(request.url()) && request.url() !== page.url() && !request.isNavigationRequest())
      wrong.push(`asked for ${request.url()}`);
  });
  return { page, complaints, wrong };
}

/** Whether anything ran that was put into a page. */
export const ran = (page: Page) => page.evaluate(() => (window as unknown as { ran?: boolean }).ran);

export const ready = (page: Page) => page.locator('html[data-ready]').waitFor({ state: 'attached' });
