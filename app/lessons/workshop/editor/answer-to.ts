import { readLesson } from '@/lib/lesson/read-lesson';
import type { Parsed } from '@/lib/quantity/parsed';
import { packStep, type PackedStep, type PageOfStep } from '../../own-page/pack-step';
import type { PreparedLesson } from '../../prepared';
import { prepareText, type Unprepared } from '../looks/prepare-text';

/** What a worker is asked for: a lesson for the screen or, where `page` says which, a question of it for a page of its own. */
export type Asked = Unprepared & { readonly page?: PageOfStep };

/** What was asked for; undefined where the lesson has faults. */
export function answerTo(asked: Asked): PreparedLesson | Parsed<PackedStep> | undefined {
  const { text, slug, known, page } = asked;
  if (!page) return prepareText(asked);
  const read = readLesson(text, { known });
  return read.ok ? packStep(read.lesson, slug, page) : undefined;
}
