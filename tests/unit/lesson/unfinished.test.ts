import { stringify } from 'yaml';
import { expect, it } from 'vitest';
import { DIVE_FIELDS, lessonFields, stepFields } from '@/app/lessons/workshop/editor/field-specs';
import { lessonData, withStep } from '@/lib/lesson/edit-lesson';
import { STEP_KINDS } from '@/lib/lesson/step';
import { lessonDraft } from '@/lib/lesson/step-drafts';
import { isPlaceholder, unfinishedIn } from '@/lib/lesson/unfinished';
import { KNOWN, SOUND, THIRTY } from './made-lessons';

it('a lesson that was only begun is not finished, and says where; one that was written is', () => {
  const begun = lessonData(withStep(stringify(lessonDraft('Mine', THIRTY)), 'predict'));
  expect(unfinishedIn(begun).map((path) => path.join('.'))).toEqual(
    expect.arrayContaining(['summary', 'objectives.0', 'steps.0.text', 'steps.1.title', 'steps.2.points.0']),
  );
  expect(unfinishedIn(lessonData(SOUND))).toEqual([]);
});

/** The texts a press on “Add” puts into a lesson. */
function madeIn(fields: unknown): string[] {
  if (typeof fields !== 'object' || fields === null) return [];
  return Object.entries(fields).flatMap(([key, one]: [string, unknown]) =>
    key === 'make' ? proseIn(one) : madeIn(one),
  );
}
function proseIn(value: unknown): string[] {
  if (typeof value === 'string') return /^[A-Z][^{}]* [^{}]*[.?]$/.test(value) ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(proseIn) : [];
}

it('whatever the forms of the workshop put in to be written over is known as such', () => {
  const made = [DIVE_FIELDS, ...lessonFields(KNOWN), ...STEP_KINDS.flatMap((kind) => stepFields(kind, KNOWN, {}))];
  const texts = madeIn(made);
  expect(texts.length).toBeGreaterThan(8);
  expect(texts.filter((text) => !isPlaceholder(text))).toEqual([]);
});
