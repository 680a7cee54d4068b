import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { TURN_TAGS } from './run/turn-tags.mjs';
import { runSeed } from './seed.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** What is sensitive to anything that runs beside it: frames counted, the whole site kept, bytes and waits measured. */
const ALONE = ['bring', 'offline', 'weight'].map((name) => `tests/browser/${name}.test.ts`);

/** Tests that drive a real browser against the built site: one by one those that want no other page beside them, and then several files at once. */
export default defineConfig({
  root,
  cacheDir: 'node_modules/.vite',
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    env: { SEED: String(runSeed) },
    runner: './tests/run/turns.ts',
    tags: TURN_TAGS,
    // The library's modules are made ready once for the library, the screens and the browser.
    experimental: { fsModuleCache: true },
    environment: 'node',
    pool: 'forks',
    // The files of a worker share its browser; each visit has a context of its own.
    isolate: false,
    maxWorkers: 2,
    testTimeout: process.env['LONG'] === undefined ? 180_000 : 900_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ALONE,
          globalSetup: ['tests/seed.mjs', 'tests/browser/serve-built-site.ts'],
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser alone',
          include: ALONE,
          globalSetup: ['tests/browser/serve-built-site.ts'],
          maxWorkers: 1,
          sequence: { groupOrder: 0 },
        },
      },
    ],
  },
});
