import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { siteFolder } from '../../app/commands/site/build-site';
import { classHandler } from '../../app/commands/class/class-handler';
import { serveSite } from '../../app/commands/serve/serve-site';

declare module 'vitest' {
  interface ProvidedContext {
    siteAddress: string;
  }
}

/** Serves `out/` on a free port for the whole run; tests read the address with `inject('siteAddress')`. */
export default async function serveBuiltSite(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(join(siteFolder, 'index.html'))) {
    throw new Error('There is no built site in out/ to test. Build it first: npm run build');
  }
  const site = await serveSite(siteFolder, 0, { handlers: [classHandler()] });
  project.provide('siteAddress', site.address);
  return site.close;
}
