import type { Page } from 'playwright-core';

/** What the policy of the pages refuses from now on, and what is asked of another origin than theirs, one line each. */
export async function underPolicy(page: Page, home: string): Promise<{ refused: string[]; abroad: string[] }> {
  const refused: string[] = [];
  const abroad: string[] = [];
  await page.exposeFunction('noteRefused', (what: string) => void refused.push(what));
  await page.addInitScript(() => {
    document.addEventListener(
      'securitypolicyviolation',
      ({ effectiveDirective, blockedURI, sample, sourceFile, lineNumber }) => {
        const note = (window as unknown as { noteRefused: (what: string) => void }).noteRefused;
        note(
          `${location.pathname}: ${effectiveDirective} refused ${blockedURI} ${sample} (${sourceFile}:${lineNumber})`,
        );
      },
    );
  });
  page.context().on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (origin !== home && !['data:', 'blob:', 'about:'].includes(protocol))
      abroad.push(`${page.url()} asked for ${request.url()}`);
  });
  return { refused, abroad };
}
