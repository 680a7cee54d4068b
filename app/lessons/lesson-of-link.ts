import { decodeLesson, nearLessonOf } from '@/lib/files/links/lesson-link';
import type { Parsed } from '@/lib/quantity/parsed';
import { yamlPath } from '../parts/lesson-paths';

/** The text of the lesson a link carries; the lesson of the shelf it leans on is fetched for it. */
export async function lessonOfLink(fragment: string): Promise<Parsed<string>> {
  const slug = nearLessonOf(fragment);
  const answer = slug === undefined ? undefined : await fetch(yamlPath(slug)).catch(() => undefined);
  return decodeLesson(fragment, answer?.ok === true ? await answer.text().catch(() => undefined) : undefined);
}
