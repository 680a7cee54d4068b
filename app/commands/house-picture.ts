/** Which folders of the house import which, and how that is drawn: folders as floors, imports as arrows that run down. */

/** What each folder imports, by its path. */
export type Imports = ReadonlyMap<string, ReadonlySet<string>>;

/** A file of the house by its path, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

const SPECIFIER = /(?:\bfrom|\bimport\(|\bimport)\s*'([^']+)'/g;

/** Rooms of app and folders of lib are floors; content is the ground they stand on. Files right under app are its pages. */
function folderOf(path: string): string {
  const [house = '', folder = ''] = path.split('/');
  if (house === 'content') return house;
  return folder.includes('.') ? house : `${house}/${folder}`;
}

function resolved(from: string, specifier: string): string | undefined {
  if (specifier.startsWith('@/')) return specifier.slice(2);
  if (!specifier.startsWith('.')) return undefined;
  const parts = from.split('/').slice(0, -1);
  for (const part of specifier.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** Which folders import which, from the texts of their files. A dynamic import and a type count as well. */
export function importsOf(files: readonly SourceFile[]): Imports {
  const imports = new Map<string, Set<string>>();
  const folders = new Set(files.map(({ path }) => folderOf(path)));
  for (const { path, text } of files) {
    const from = folderOf(path);
    const reached = imports.get(from) ?? new Set<string>();
    imports.set(from, reached);
    for (const [, specifier = ''] of text.matchAll(SPECIFIER)) {
      const to = resolved(path, specifier);
      const folder = to && folderOf(to.includes('/') ? `${to}.ts` : to);
      if (folder && folder !== from && folders.has(folder)) reached.add(folder);
    }
  }
  return imports;
}

/**
 * The floor of each folder: the ground is 0, and a folder stands one floor above the highest it imports.
 *
 * @throws Error where folders import each other, since one of the arrows would run up; it names the circle.
 */
export function floorsOf(imports: Imports): ReadonlyMap<string, number> {
  const floors = new Map<string, number>();
  const floorOf = (folder: string, way: readonly string[]): number => {
    if (way.includes(folder))
      throw new Error(`An arrow runs up: ${[...way.slice(way.indexOf(folder)), folder].join(' → ')}.`);
    const known = floors.get(folder);
    if (known !== undefined) return known;
    const below = [...(imports.get(folder) ?? [])].map((one) => floorOf(one, [...way, folder]));
    const floor = below.length === 0 ? 0 : Math.max(...below) + 1;
    floors.set(folder, floor);
    return floor;
  };
  for (const folder of imports.keys()) floorOf(folder, []);
  return floors;
}

/** Folders reached from a folder by one arrow or more. */
function reachedFrom(folder: string, imports: Imports): Set<string> {
  const reached = new Set<string>();
  const follow = (from: string) => {
    for (const to of imports.get(from) ?? []) {
      if (reached.has(to)) continue;
      reached.add(to);
      follow(to);
    }
  };
  follow(folder);
  return reached;
}

/** The house as a text drawing: the highest floor first. An arrow is left out where others lead to the same folder. */
export function drawHouse(imports: Imports): string {
  const floors = floorsOf(imports);
  const names = [...floors.keys()].sort(
    (one, other) => floors.get(other)! - floors.get(one)! || one.localeCompare(other),
  );
  const width = Math.max(...names.map((name) => name.length));
  let last: number | undefined;
  return names
    .flatMap((name) => {
      const direct = [...(imports.get(name) ?? [])];
      const shown = direct.filter((to) => !direct.some((other) => reachedFrom(other, imports).has(to)));
      const arrows = shown.sort((one, other) => floors.get(other)! - floors.get(one)! || one.localeCompare(other));
      const floor = floors.get(name)!;
      const line = `${floor === last ? '  ' : String(floor).padStart(2)}  ${name.padEnd(width)}${
        arrows.length > 0 ? `  ▼ ${arrows.join(', ')}` : ''
      }`;
      last = floor;
      return [line.trimEnd()];
    })
    .join('\n');
}
