import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { generateSW } from 'workbox-build';
import { offlineFiles } from '../../offline/offline-files';

const answers = fileURLToPath(new URL('../../offline/answers.js', import.meta.url));

/**
 * Writes the worker that keeps the whole site on a visitor's machine. Run it last: it holds the hash of every file.
 * A newer one waits until a person asks for it, or until no window of the older is open.
 */
export async function writeServiceWorker(folder: string): Promise<void> {
  copyFileSync(answers, join(folder, offlineFiles.answers));
  const { warnings } = await generateSW({
    globDirectory: folder,
    globPatterns: ['**/*.{html,js,css,woff2,svg,png,yaml,webmanifest}'],
    globIgnores: [offlineFiles.answers],
    maximumFileSizeToCacheInBytes: 2 * 1024 * 1024,
    // The names of these files hold their hash already.
    dontCacheBustURLsMatching: /_next\/static\//,
    // The site is files alone: what stands after a question mark is read by the page, if at all.
    ignoreURLParametersMatching: [/./],
    importScripts: [offlineFiles.answers],
    // An unknown address is asked of the network; without one, the page that says so is shown.
    runtimeCaching: [
      {
        urlPattern: ({ request }) => request.mode === 'navigate',
        handler: 'NetworkOnly',
        options: { precacheFallback: { fallbackURL: '404.html' } },
      },
    ],
    skipWaiting: false,
    clientsClaim: true,
    cleanupOutdatedCaches: true,
    inlineWorkboxRuntime: true,
    sourcemap: false,
    mode: 'production',
    swDest: join(folder, offlineFiles.worker),
  });
  if (warnings.length > 0)
    throw new Error(`Not every file can be kept for use without a network:\n${warnings.join('\n')}`);
}
