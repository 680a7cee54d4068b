import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { PreparedLesson } from './prepared';

/*
 * A lesson is another one in feet, with round figures of its own. Its texts hold the values of both; what else differs,
 * such as the dives and the moments in them, is kept beside it, place by place.
 */

/** What is otherwise at a place, or within it. */
export type Otherwise = { readonly be: unknown } | { readonly within: Readonly<Record<string, Otherwise>> };

/** The lesson as it is taken in one system of units. */
export function lessonIn(lesson: PreparedLesson, units: UnitSystem): PreparedLesson {
  return units === 'metric' || !lesson.inFeet ? lesson : changed(lesson, lesson.inFeet);
}

function changed<T extends object>(value: T, { within }: { readonly within: Readonly<Record<string, Otherwise>> }): T {
  const copy = Object.assign(Array.isArray(value) ? [] : {}, value) as Record<string, unknown>;
  for (const key in within) {
    const part = within[key]!;
    copy[key] = 'be' in part ? part.be : changed(copy[key] as object, part);
  }
  return copy as T;
}
