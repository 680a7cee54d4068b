'use client';

import { standingIn, type StepAsks } from '@/lib/lesson/standing';
import { useLessonProgress } from './player/progress-store';

/** How far one has come with a lesson, in a few words: what was seen apart from what was answered. */
export function LessonStanding({ slug, steps }: { slug: string; steps: readonly StepAsks[] }) {
  const { seen, steps: all, answered, questions, done } = standingIn(steps, useLessonProgress(slug));
  if (seen === 0 && answered === 0) return null;
  return (
    <b>
      {' · '}
      {done ? 'done' : `${seen} of ${all} steps seen, ${answered} of ${questions} questions answered`}
    </b>
  );
}
