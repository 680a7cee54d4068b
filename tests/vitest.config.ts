import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { TURN_TAGS } from './run/turn-tags.mjs';
import { runSeed } from './seed.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Screens in a light DOM. */
const SCREENS = {
  environment: 'happy-dom',
  pool: 'threads',
  setupFiles: 'tests/screens/setup.ts',
  css: { modules: { classNameStrategy: 'non-scoped' } },
  // The browser runs beside it.
  testTimeout: 60_000,
} as const;

/** Tests that put a module of their own in the place of one of the app. */
const APART = ['tests/screens/lessons-workshop.test.tsx'];

/** Everything but the real browser: the pure library in Node, the screens in a light DOM. */
export default defineConfig({
  root,
  cacheDir: 'node_modules/.vite',
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  plugins: [react()],
  test: {
    env: { SEED: String(runSeed) },
    runner: './tests/run/turns.ts',
    tags: TURN_TAGS,
    // The library's modules are made ready once for the library, the screens and the browser.
    experimental: { fsModuleCache: true },
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'library',
          environment: 'node',
          include: ['tests/{unit,published,laws}/**/*.test.ts'],
          pool: 'threads',
          isolate: false,
          globalSetup: ['tests/seed.mjs'],
          // Laws draw ten times as much in a long run.
          testTimeout: process.env['LONG'] === undefined ? 300_000 : 1_200_000,
        },
      },
      {
        extends: true,
        test: {
          ...SCREENS,
          name: 'screens',
          isolate: false,
          include: ['tests/screens/**/*.test.{ts,tsx}'],
          exclude: APART,
        },
      },
      {
        extends: true,
        // A module put in the place of another stays there for whatever runs after in the same thread.
        test: { ...SCREENS, name: 'screens apart', include: APART },
      },
    ],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
