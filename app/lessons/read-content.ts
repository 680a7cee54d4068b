import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { glossarySchema, type Term } from '@/lib/lesson/glossary';

const FOLDER = join(process.cwd(), 'content', 'lessons');

/** The glossary, in the order of the alphabet. */
export function readGlossary(): readonly Term[] {
  const terms = glossarySchema.parse(parse(readFileSync(join(process.cwd(), 'content', 'glossary.yaml'), 'utf8')));
  return [...terms].sort((one, other) => one.term.localeCompare(other.term, 'en'));
}

/** The files of the shipped lessons, in the order of their numbers. */
export function lessonFiles(): readonly { readonly slug: string; readonly path: string }[] {
  return readdirSync(FOLDER)
    .filter((name) => /^\d\d-[a-z0-9-]+\.yaml$/.test(name))
    .sort()
    .map((name) => ({ slug: name.replace(/\.yaml$/, ''), path: join(FOLDER, name) }));
}
