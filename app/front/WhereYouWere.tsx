'use client';

import { useEffect, useState } from 'react';
import { lessonPath } from '../parts/lesson-paths';
import { routes } from '../parts/routes';
import type { BeenHere } from './been-here';
import styles from './WhereYouWere.module.css';

/** As much of a lesson as is needed to say how far one has come. */
export interface ShelvedLesson {
  readonly slug: string;
  readonly title: string;
  readonly steps: readonly string[];
}

/** Ways back to what an earlier visit left. Its place is kept free, so that nothing moves when it is found. */
export function WhereYouWere({ lessons }: { lessons: readonly ShelvedLesson[] }) {
  const [found, setFound] = useState<BeenHere>();
  useEffect(() => {
    let gone = false;
    // Read apart from the page, which opens sooner so. Where it can't be had, the page is as for someone new.
    void import('./been-here')
      .then(({ beenHere }) => beenHere(lessons))
      .then((here) => !gone && setFound(here))
      .catch(() => undefined);
    return () => {
      gone = true;
    };
  }, [lessons]);

  const { lesson, dive } = found ?? {};
  return (
    <div className={`${styles.place} unprinted`}>
      {lesson || dive !== undefined ? (
        <p>
          <b>Where you were:</b>{' '}
          {lesson && (
            <a href={lessonPath(lesson.of.slug)}>
              {lesson.of.title}, {lesson.done} of {lesson.of.steps.length} steps seen
            </a>
          )}
          {lesson && dive !== undefined && ' · '}
          {dive !== undefined && <a href={routes.desk.path}>your desk, “{dive}”</a>}
        </p>
      ) : (
        <p>It runs in this browser, with no account, and nothing you do leaves your machine.</p>
      )}
    </div>
  );
}
