import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { readLesson } from '@/lib/lesson/read-lesson';
import { prepareLesson } from '../../prepare-lesson';
import type { PreparedLesson } from '../../prepared';

/** A lesson's text, to be made ready under a name. */
export interface Unprepared {
  readonly text: string;
  readonly slug: string;
  readonly known: KnownNames;
}

/** A lesson ready for the screen; undefined where it has faults, for which it is looked through first. Links in it to lessons lead nowhere. */
export function prepareText({ text, slug, known }: Unprepared): PreparedLesson | undefined {
  const read = readLesson(text, { known });
  return read.ok ? prepareLesson(read.lesson, slug, () => undefined) : undefined;
}
