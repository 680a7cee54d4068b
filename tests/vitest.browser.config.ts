import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Tests that drive a real browser against the built site, one file at a time. */
export default defineConfig({
  root,
  cacheDir: 'node_modules/.vite',
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    environment: 'node',
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/serve-built-site.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
