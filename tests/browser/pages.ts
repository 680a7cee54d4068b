import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { filesOf } from '@/app/commands/site/finish-site';
import { embedPath } from '@/app/parts/routes';
import { siteFolder } from '@/app/commands/site/build-site';
import { lessonPath } from '@/app/parts/lesson-paths';
import { RENAMED } from '@/lib/lesson/renamed';
import { drawn } from './drawn';
import { everyPage } from './every-page';

/**
 * The address of every page of the built site, less the one for addresses that are none and the one that shows a single
 * dive by itself, which alone.test.ts goes through.
 */
export function builtPages(): string[] {
  if (!existsSync(join(siteFolder, 'index.html')))
    throw new Error('There is no built site in out/ to test. Build it first: npm run build');
  return filesOf(siteFolder)
    .filter((file) => /(^|\/)index\.html$/.test(file))
    .map((file) => `/${file.replace(/index\.html$/, '')}`)
    .filter((path) => path !== embedPath)
    .sort();
}

/** One page of every kind, and some of the others: other ones in every run, all of them where there is time. */
export function pagesToWalk(): string[] {
  const kinds = new Set(everyPage.map(({ path }) => path));
  // An address of before leads on at once, to a page that is walked by its own.
  const before = new Set(Object.keys(RENAMED).map((slug) => lessonPath(slug)));
  const others = builtPages().filter((path) => !kinds.has(path) && !before.has(path));
  return [...builtPages().filter((path) => kinds.has(path)), ...drawn(others, 3)];
}
