import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { PreparedLesson } from './prepared';

/*
 * A lesson is another one in feet, with round figures of its own. Its texts hold the values of both; what else differs,
 * such as the dives and the moments in them, is kept beside it, place by place.
 */

/** What is otherwise at a place, or within it. */
export type Otherwise = { readonly be: unknown } | { readonly within: Readonly<Record<string, Otherwise>> };

const inFeet = new WeakMap<PreparedLesson, PreparedLesson>();

/** The lesson as it is taken in one system of units. */
export function lessonIn(lesson: PreparedLesson, units: UnitSystem): PreparedLesson {
  if (units === 'metric' || !lesson.inFeet) return lesson;
  const known = inFeet.get(lesson) ?? (changed(lesson, lesson.inFeet) as PreparedLesson);
  inFeet.set(lesson, known);
  return known;
}

function changed(value: unknown, otherwise: Otherwise): unknown {
  if ('be' in otherwise) return otherwise.be;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value)
    ? [...(value as unknown[])]
    : { ...(value as object) };
  for (const [key, part] of Object.entries(otherwise.within))
    (copy as Record<string, unknown>)[key] = changed((copy as Record<string, unknown>)[key], part);
  return copy;
}
