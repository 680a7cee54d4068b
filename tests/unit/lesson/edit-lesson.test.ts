import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import {
  lessonData,
  placeOfStep,
  withEntry,
  withEntryMoved,
  withKey,
  withStep,
  withStepCopied,
  withValue,
} from '@/lib/lesson/edit-lesson';
import { readLesson } from '@/lib/lesson/read-lesson';
import { STEP_KINDS } from '@/lib/lesson/step';
import { lessonDraft } from '@/lib/lesson/step-drafts';
import { KNOWN, SOUND, THIRTY, told } from './made-lessons';

const known = { ...KNOWN, pictures: ['profile', 'no-stop'] };

function ids(text: string): string[] {
  return (lessonData(text) as { steps: { id: string }[] }).steps.map(({ id }) => id);
}

describe('changing a lesson’s text', () => {
  it('changes one value and leaves the rest as it was written, remarks too', () => {
    const remarked = SOUND.replace('minutes: 5', 'minutes: 5 # about');
    const changed = withValue(remarked, ['summary'], 'Another line.');
    expect(changed).toContain('minutes: 5 # about');
    expect(changed).toContain('summary: Another line.');
    expect(told(changed)).toEqual(['sound']);
  });

  it('writes a text of several lines as a block', () => {
    const changed = withValue(SOUND, ['steps', 0, 'text'], 'One line.\nAnother.\n');
    expect(changed).toContain('    text: |\n      One line.\n      Another.\n');
  });

  it('takes a value away', () => {
    expect(lessonData(withValue(SOUND, ['steps', 0, 'claims'], undefined))).toMatchObject({
      steps: expect.arrayContaining([expect.not.objectContaining({ claims: expect.anything() })]),
    });
  });

  it('moves, copies and adds steps', () => {
    expect(ids(withEntryMoved(SOUND, ['steps'], 0, 2))).toEqual(['foretell', 'own-dive', 'begin', 'check']);
    expect(ids(withEntryMoved(SOUND, ['steps'], 0, 9))).toEqual(ids(SOUND));
    expect(ids(withStepCopied(SOUND, 0))).toEqual(['begin', 'begin-1', 'foretell', 'own-dive', 'check']);
    expect(ids(withStep(SOUND, 'read', 0))).toEqual(['begin', 'read-1', 'foretell', 'own-dive', 'check']);
    expect(ids(withStep(withStep(SOUND, 'read'), 'read'))).toEqual([
      'begin',
      'foretell',
      'own-dive',
      'check',
      'read-1',
      'read-2',
    ]);
  });

  it('puts a new step before the summing-up that ends a lesson, unless it is one itself', () => {
    const begun = stringify(lessonDraft('Mine', THIRTY));
    expect(ids(withStep(begun, 'predict'))).toEqual(['begin', 'predict-1', 'recap']);
    expect(ids(withStep(begun, 'run', 1))).toEqual(['begin', 'run-1', 'recap']);
    expect(ids(withStep(begun, 'recap'))).toEqual(['begin', 'recap', 'recap-1']);
    expect([placeOfStep(lessonData(begun), 'predict'), placeOfStep(lessonData(begun), 'recap', 1)]).toEqual([1, 2]);
  });

  it('adds to a list that is not there yet, and renames a script', () => {
    expect(lessonData(withEntry(SOUND, ['needs'], 'A pencil.'))).toMatchObject({ needs: ['A pencil.'] });
    expect(lessonData(withKey(SOUND, ['scripts'], 'main', 'first'))).toMatchObject({
      scripts: { first: { title: 'Thirty metres' } },
    });
  });

  it('gives back what is not YAML as it is', () => {
    expect(withValue('steps: [', ['title'], 'x')).toBe('steps: [');
    expect(lessonData('steps: [')).toBeUndefined();
    expect(withValue('just words', ['steps', 0, 'title'], 'x')).toBe('just words');
  });

  it.each(STEP_KINDS)('begins a step that is sound as it stands: %s', (kind) => {
    const draft = stringify(lessonDraft('New', THIRTY));
    const read = readLesson(withStep(draft, kind, 0), { known, draws: 20 });
    expect(read.ok ? 'sound' : read.faults).toBe('sound');
  });

  it('begins a lesson that is sound as it stands', () => {
    const read = readLesson(stringify(lessonDraft('New', THIRTY)), { known });
    expect(read.ok ? 'sound' : read.faults).toBe('sound');
  });
});
