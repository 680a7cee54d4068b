'use client';

import { useLessonProgress } from './player/progress-store';

/** How far one has come with a lesson, in a few words. */
export function LessonStanding({ slug, steps }: { slug: string; steps: readonly string[] }) {
  const { done } = useLessonProgress(slug);
  const count = steps.filter((id) => done.includes(id)).length;
  if (count === 0) return null;
  return <b> · {count === steps.length ? 'done' : `${count} of ${steps.length} steps done`}</b>;
}
