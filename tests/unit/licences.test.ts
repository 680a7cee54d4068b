import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { installedPackages } from '@/app/licences/installed-packages';
import { allowedAtBuild, allowedLicences } from '@/content/licences';

const packages = installedPackages();
const named = (list: typeof allowedLicences) => list.map(({ licence }) => licence);

/** What the lock file itself calls needed at run time: everything it does not mark as for development only. */
function notForDevelopment(): string[] {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    packages: Record<string, { dev?: boolean; devOptional?: boolean }>;
  };
  return Object.entries(lock.packages).flatMap(([path, { dev, devOptional }]) =>
    path === '' || dev || devOptional ? [] : [path.slice(path.lastIndexOf('node_modules/') + 13)],
  );
}

/** Packages that the app's own code asks for by name. */
function askedFor(): Set<string> {
  const found = new Set<string>();
  for (const folder of ['app', 'lib', 'content']) {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile() || !/\.tsx?$/.test(entry.name)) continue;
      const text = readFileSync(join(entry.parentPath, entry.name), 'utf8');
      for (const [, name] of text.matchAll(
        /(?:\bfrom |^import |\bimport\()'((?:@[a-z][\w-]*\/)?[a-z][\w.-]*)(?:\/[^']*)?'/gm,
      ))
        found.add(name!);
    }
  }
  return found;
}

describe('the list of licences', () => {
  it('names every package that the lock file calls needed at run time', () => {
    const names = new Set(packages.map(({ name }) => name));
    const needed = notForDevelopment();
    expect(needed.length).toBeGreaterThan(80);
    expect(needed.filter((name) => !names.has(name))).toEqual([]);
  });

  it('counts among what reaches a page whatever the screens and the library ask for', () => {
    const inPages = new Set(packages.filter((one) => one.inPages).map(({ name }) => name));
    const atTerminal = ['mrmime', 'oxfmt', 'subset-font', 'vite', 'workbox-build'];
    const asked = [...askedFor()];
    expect(asked).toEqual(expect.arrayContaining(['react', 'd3', 'zod', 'mathjs', 'next']));
    expect(asked.filter((name) => !inPages.has(name) && !atTerminal.includes(name))).toEqual([]);
  });

  it.each(packages.map(({ name, licence, inPages }) => [name, licence, inPages] as const))(
    'lets %s in, under %s',
    (_name, licence, inPages) => {
      const letIn = inPages ? named(allowedLicences) : [...named(allowedLicences), ...named(allowedAtBuild)];
      expect(licence.split(' AND ').filter((one) => !letIn.includes(one))).toEqual([]);
    },
  );

  it('gives the text of nearly all that reaches a page, the fonts’ among them', () => {
    const shipped = packages.filter(({ inPages }) => inPages);
    expect(
      shipped
        .filter(({ name }) => name.startsWith('@fontsource'))
        .map(({ text }) => /SIL OPEN FONT LICENSE/i.test(text ?? '')),
    ).toEqual([true, true, true]);
    expect(shipped.filter(({ text }) => text === undefined).length).toBeLessThan(shipped.length / 10);
  });
});
