import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRoutes, routes, type Route } from '@/app/parts/routes';

const all: [string, Route][] = Object.entries(routes);

describe('the routes', () => {
  it.each(all)('%s is offered exactly when its screen exists', (_name, { path, open }) => {
    expect(open).toBe(existsSync(join(process.cwd(), 'app', path, 'page.tsx')));
  });

  it('have paths that differ and end in a slash, as the exported folders do', () => {
    const paths = all.map(([, { path }]) => path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths.every((path) => path.endsWith('/'))).toBe(true);
  });

  it('leave the front door to the name in the header', () => {
    expect(openRoutes.map(({ path }) => path)).not.toContain('/');
  });
});
