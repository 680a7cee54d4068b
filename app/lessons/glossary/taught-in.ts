import type { ShippedLesson } from '../load-lessons';

/** How many lessons are named with a term. */
const MOST_NAMED = 3;

/** The lessons whose texts lead to a term, in their order: where it is taught first. */
export function taughtIn(term: string, lessons: readonly ShippedLesson[]): readonly ShippedLesson[] {
  return lessons.filter(({ text }) => text.includes(`](term:${term})`)).slice(0, MOST_NAMED);
}
