import { mkdirSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { withPolicy } from './content-policy';
import { firstFaces, withFontsFirst } from './fonts-first';
import { keepMathLetters } from './math-font';
import { writeServiceWorker } from './service-worker';

/** What no page asks for: copies of each page for a router that is not used, and sources of workers beside the built ones. */
const UNASKED_FILES = /\.txt$|\.worker\.[^/]*\.ts$|\.js\.map$/;

/** Further copies of the not-found page. */
const UNASKED_FOLDERS = ['404', '_not-found'];

/**
 * Makes of a fresh export what is served: nothing that no page asks for, its fonts asked for first and a policy in each
 * page, its formulas' letters and no others, `besides` (pages by their path, which come with a policy of their own), and then the list of all files for use
 * without a network.
 */
export async function finishSite(folder: string, besides: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const unasked of UNASKED_FOLDERS) rmSync(join(folder, unasked), { recursive: true, force: true });
  const files = filesOf(folder);
  const faces = firstFaces(files);
  for (const file of files) {
    if (UNASKED_FILES.test(file)) rmSync(join(folder, file));
    else if (file.endsWith('.html'))
      writeFileSync(join(folder, file), withPolicy(withFontsFirst(readFileSync(join(folder, file), 'utf8'), faces)));
  }
  await keepMathLetters(folder, files);
  for (const [path, page] of Object.entries(besides)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), page);
  }
  await writeServiceWorker(folder);
}

/** Every file in a folder and the folders in it, as paths from there with forward slashes. */
export function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => path.replaceAll('\\', '/'));
}
