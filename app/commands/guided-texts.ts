import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { format, type FormatConfig } from 'oxfmt';
import { GUIDE_PARTS, withPart } from './guide-parts';
import type { SourceFile } from './house-picture';

/** The files of the house under a root folder, with their paths from it. */
export function sourceFiles(root: string): SourceFile[] {
  return ['app', 'lib', 'content']
    .flatMap((house) =>
      readdirSync(join(root, house), { recursive: true, encoding: 'utf8' }).map((path) => `${house}/${path}`),
    )
    .map((path) => path.split(sep).join('/'))
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));
}

/** Every text with parts from the code as it should be, by its file. */
export async function guidedTexts(root: string): Promise<ReadonlyMap<string, string>> {
  const files = sourceFiles(root);
  const texts = new Map<string, string>();
  for (const { file, name, make } of GUIDE_PARTS)
    texts.set(file, withPart(texts.get(file) ?? readFileSync(join(root, file), 'utf8'), name, make(files)));
  const { prettier } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { prettier: FormatConfig };
  for (const [file, text] of texts) texts.set(file, (await format(file, text, prettier)).code);
  return texts;
}
