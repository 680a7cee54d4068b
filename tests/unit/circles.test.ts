import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

const app = resolve('app');
const files = readdirSync(app, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
  .map((file) => join(app, file));
const known = new Set(files);

/** Every file of the app that a file imports, also by type alone and when it is first needed. */
function importsOf(file: string): string[] {
  return ts.preProcessFile(readFileSync(file, 'utf8')).importedFiles.flatMap(({ fileName }) => {
    if (!fileName.startsWith('.')) return [];
    const path = resolve(dirname(file), fileName);
    return [path, `${path}.ts`, `${path}.tsx`].filter((one) => known.has(one));
  });
}

const imports = new Map(files.map((file) => [file, importsOf(file)]));

/** Files that lead to one another, each circle named once: Tarjan's components (1972). */
function circles(): string[][] {
  const found: string[][] = [];
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const visit = (file: string): void => {
    index.set(file, index.size);
    low.set(file, index.get(file)!);
    stack.push(file);
    for (const next of imports.get(file)!) {
      if (!index.has(next)) {
        visit(next);
        low.set(file, Math.min(low.get(file)!, low.get(next)!));
      } else if (stack.includes(next)) low.set(file, Math.min(low.get(file)!, index.get(next)!));
    }
    if (low.get(file) === index.get(file))
      found.push(stack.splice(stack.indexOf(file)).map((one) => relative(app, one)));
  };
  for (const file of files) if (!index.has(file)) visit(file);
  return found;
}

it('no circle of files in the app is longer than two', () => {
  expect(files.length).toBeGreaterThan(300);
  expect(circles().filter((circle) => circle.length > 2)).toEqual([]);
});

it('pictures know no store and no screen: they import the parts and one another', () => {
  const astray = files
    .filter((file) => relative(app, file).startsWith('pictures'))
    .flatMap((file) => imports.get(file)!.filter((to) => !/^(pictures|parts)[/\\]/.test(relative(app, to))));
  expect(astray.map((file) => relative(app, file))).toEqual([]);
});
