import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';

export interface InstalledPackage {
  readonly name: string;
  readonly version: string;
  /** By its SPDX name, or several joined by AND. */
  readonly licence: string;
  /** The text the package carries; undefined where it carries none, or is meant for another kind of machine and not installed on this. */
  readonly text: string | undefined;
  /** Whether some of it may reach a reader's browser; the others only build the site or serve it. */
  readonly inPages: boolean;
}

const Lock = z.object({
  packages: z.record(
    z.string(),
    z.object({
      version: z.string().optional(),
      license: z.string().optional(),
      dependencies: z.record(z.string(), z.string()).optional(),
      optionalDependencies: z.record(z.string(), z.string()).optional(),
      peerDependencies: z.record(z.string(), z.string()).optional(),
      peerDependenciesMeta: z.record(z.string(), z.object({ optional: z.boolean().optional() })).optional(),
    }),
  ),
});
type Entries = z.infer<typeof Lock>['packages'];

/** Commands and the server: nothing of them is in a page. */
const TERMINAL = ['mrmime', 'tsx'];

/** The page builder is mostly that; these are the packages it puts into pages besides its own code. */
const BUILDER = 'next';
const BUILDER_PUTS_IN = ['@swc/helpers', 'client-only', 'react', 'react-dom', 'styled-jsx'];

/** Copies of other packages that the page builder carries within itself, of which pages may hold some. */
const WITHIN_BUILDER = [
  'path-to-regexp',
  'process',
  'react-is',
  'react-server-dom-turbopack',
  'scheduler',
  'web-vitals',
];

/** Written into the worker that keeps the site for use without a network, by a tool that is only needed to build it. */
const IN_WORKER = ['workbox-core', 'workbox-precaching', 'workbox-routing', 'workbox-strategies'];

/** Every package of `package.json`'s dependencies and whatever they need, with versions from the lock file. Only for pages made at build time. */
export function installedPackages(): readonly InstalledPackage[] {
  const root = process.cwd();
  const { packages } = Lock.parse(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')));
  const names = Object.keys(packages['']?.dependencies ?? {});
  const all = reached(packages, names);
  const shipped = new Set([
    ...reached(
      packages,
      names.filter((name) => name !== BUILDER && !TERMINAL.includes(name)),
    ),
    ...reached(packages, BUILDER_PUTS_IN),
    `node_modules/${BUILDER}`,
    ...IN_WORKER.map((name) => `node_modules/${name}`),
  ]);
  const found = [...new Set([...all, ...shipped])]
    .filter((path) => packages[path])
    .map((path) => packageAt(root, path, packages[path]!, shipped.has(path)));
  return [...found, ...withinBuilder(root)].sort((one, other) => one.name.localeCompare(other.name, 'en'));
}

/** Where in the lock file the named packages and all they need stand. */
function reached(packages: Entries, names: readonly string[]): Set<string> {
  const found = new Set<string>();
  const visit = (path: string | undefined) => {
    if (path === undefined || found.has(path)) return;
    found.add(path);
    const { dependencies, optionalDependencies, peerDependencies = {}, peerDependenciesMeta } = packages[path]!;
    const peers = Object.keys(peerDependencies).filter((name) => !peerDependenciesMeta?.[name]?.optional);
    for (const name of [...Object.keys({ ...dependencies, ...optionalDependencies }), ...peers])
      visit(nearest(packages, path, name));
  };
  for (const name of names) visit(nearest(packages, '', name));
  return found;
}

/** The copy of a package that one at `from` gets: its own, or that of the nearest folder above. */
function nearest(packages: Entries, from: string, name: string): string | undefined {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf('node_modules/') - 1))) {
    const path = `${folder}${folder && '/'}node_modules/${name}`;
    if (packages[path]) return path;
    if (folder === '') return undefined;
  }
}

function packageAt(
  root: string,
  path: string,
  { version, license }: Entries[string],
  inPages: boolean,
): InstalledPackage {
  const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
  return {
    name,
    version: version ?? 'unknown',
    licence: license ?? 'unknown',
    text: licenceText(join(root, path)),
    inPages,
  };
}

const Manifest = z.object({ version: z.string().optional(), license: z.string().optional() });

function withinBuilder(root: string): InstalledPackage[] {
  return WITHIN_BUILDER.map((name) => {
    const folder = join(root, 'node_modules', BUILDER, 'dist/compiled', name);
    const { version, license } = Manifest.parse(JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')));
    // React's own packages leave the licence to the file beside them, which is MIT.
    return {
      name: `${name} (within ${BUILDER})`,
      version: version ?? 'not told',
      licence: license ?? 'MIT',
      text: licenceText(folder),
      inPages: true,
    };
  });
}

function licenceText(folder: string): string | undefined {
  if (!existsSync(folder)) return undefined;
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|notice|copying)(\.(md|txt))?$/i.test(file));
  return files.length === 0
    ? undefined
    : files.map((file) => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
}
