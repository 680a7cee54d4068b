import { expect, it } from 'vitest';
import { readGlossary } from '@/app/lessons/read-content';
import { DIVE_FIELDS, lessonFields, stepFields } from '@/app/lessons/workshop/editor/field-specs';
import { knownNames } from '@/app/stage/known-names';
import { STEP_KINDS } from '@/lib/lesson/step';

const SCRIPTS = { main: { title: 'A wreck' }, longer: { title: 'The same, ten minutes longer' } };

/** Each name to choose in a form, anywhere in it, and what it is called there. */
function offered(fields: unknown): [label: string, name: string, words: string][] {
  if (typeof fields !== 'object' || fields === null) return [];
  if (!('options' in fields)) return Object.values(fields).flatMap(offered);
  const { label, options, words } = fields as { label: string; options: string[]; words?: (name: string) => string };
  return options.map((name) => [label, name, name === 'true' ? 'Yes' : (words?.(name) ?? name)]);
}

it('the forms of the workshop offer words to choose from, and no bare name of the files', () => {
  const known = knownNames(readGlossary());
  const all = [
    DIVE_FIELDS,
    ...lessonFields(known),
    ...STEP_KINDS.flatMap((kind) => stepFields(kind, known, SCRIPTS)),
  ].flatMap((field) => offered(field));
  expect(new Set(all.map(([label]) => label)).size).toBeGreaterThan(6);
  // A name is written small, in one piece or with dashes; words begin with a capital.
  expect(all.filter(([, name, words]) => words === name && name !== 'true')).toEqual([]);
  expect(all.filter(([, , words]) => !/^[A-Z0-9]/.test(words) || /[a-z][A-Z]|\w-\w+-/.test(words))).toEqual([]);
});
