import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { runSeed } from './seed.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Tests that drive a real browser against the built site, one file at a time. */
export default defineConfig({
  root,
  cacheDir: 'node_modules/.vite',
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    env: { SEED: String(runSeed) },
    environment: 'node',
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/seed.mjs', 'tests/browser/serve-built-site.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
