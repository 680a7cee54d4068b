import * as z from 'zod';
import { askSchema, truthSchema } from '@/lib/class/ask';
import { keptRecord, type RecordKind } from './kept-record';

const recordSchema = z.strictObject({
  version: z.literal(1),
  title: z.string().max(200),
  /** The whole lesson, as YAML. */
  text: z.string().max(120_000),
  questions: z.array(z.strictObject({ question: z.string().max(90), ask: askSchema, truth: truthSchema })).max(200),
});
export type OwnLessonInClass = Omit<z.infer<typeof recordSchema>, 'version'>;

const kind: RecordKind<OwnLessonInClass> = {
  name: 'halftime.class.own-lesson',
  version: 1,
  schema: recordSchema,
  write: (kept) => ({ version: 1, ...kept }),
  words: {
    unread: 'The lesson you took to class can’t be read here. Take it there again from the workshop.',
    refused: {
      full: 'There is no room left in this browser to take the lesson to class. Delete lessons or dives you no longer need, then try again.',
      blocked: 'This browser does not let the page keep anything, so the lesson can’t be taken to class.',
    },
    fileName: 'halftime-class-lesson-unread.json',
  },
};

const record = () => keptRecord(kind, () => undefined);

/** The lesson from the workshop that was taken to class last; undefined where there is none. */
export function ownLessonInClass(): OwnLessonInClass | undefined {
  return record().now();
}

export function textOfOwnLesson(): string | undefined {
  return ownLessonInClass()?.text;
}

/** Takes a lesson from the workshop to class, in place of the one before. */
export function takeToClass(lesson: OwnLessonInClass): void {
  record().keep(lesson);
}
