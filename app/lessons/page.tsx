import type { Metadata } from 'next';
import { LEVELS } from '@/lib/lesson/lesson';
import { stepAsks } from '@/lib/lesson/standing';
import { ButtonLink } from '../parts/Button';
import { Page } from '../parts/Page';
import { routes } from '../parts/routes';
import { LessonStanding } from './LessonStanding';
import { loadLessons } from './load-lessons';
import { classResultsPath, glossaryPath, lessonPath, workshopPath } from '../parts/lesson-paths';
import styles from './shelf.module.css';
import { capital } from '@/lib/quantity/capital';

export const metadata: Metadata = { title: routes.lessons.name, description: routes.lessons.summary };

const LEVEL_LEADS: Readonly<Record<(typeof LEVELS)[number], string>> = {
  'first steps': 'For whoever is new to it: pressure, gas, limits, and what an instrument shows.',
  further: 'Second dives, fast ascents, altitude, flying: where the simple picture needs more.',
  'deep course': 'Before a deep course: gas, oxygen, narcosis and staged stops. Nothing here is a plan to dive.',
  instruments: 'For whoever teaches with instruments, or checks them.',
};

/** The shelf: every lesson in its order, with what you have done of it. */
export default function LessonsPage() {
  const lessons = loadLessons();
  return (
    <Page
      title="Lessons"
      lead="Say what you expect, then see what the model does, then ask it why. Every number is worked out as you read."
    >
      {LEVELS.filter((level) => lessons.some(({ lesson }) => lesson.level === level)).map((level) => (
        <section key={level} aria-labelledby={`level-${level.replace(' ', '-')}`} className={styles.level}>
          <h2 id={`level-${level.replace(' ', '-')}`}>{capital(level)}</h2>
          <p>{LEVEL_LEADS[level]}</p>
          <ol className={styles.shelf}>
            {lessons
              .filter(({ lesson }) => lesson.level === level)
              .map(({ slug, lesson }) => (
                <li key={slug}>
                  <a href={lessonPath(slug)} className={styles.lesson}>
                    <span className={styles.number} aria-hidden="true">
                      {lesson.number}
                    </span>
                    <span className={styles.words}>
                      <span className={styles.title}>{lesson.title}</span>
                      <span>{lesson.summary}</span>
                      <span className={styles.fine}>
                        About {lesson.minutes} min
                        {lesson.after.length > 0 &&
                          `, after ${lesson.after.length === 1 ? 'lesson' : 'lessons'} ${lesson.after.join(' and ')}`}
                        <LessonStanding slug={slug} steps={stepAsks(lesson.steps)} />
                      </span>
                    </span>
                  </a>
                </li>
              ))}
          </ol>
        </section>
      ))}
      <section aria-labelledby="own" className={styles.level}>
        <h2 id="own">Words, and lessons of your own</h2>
        <div className={styles.more}>
          <ButtonLink href={glossaryPath}>Glossary</ButtonLink>
          <ButtonLink href={workshopPath}>Workshop</ButtonLink>
          <ButtonLink href={classResultsPath}>Results of a class</ButtonLink>
        </div>
        <p>
          The glossary explains the trade’s terms. In the workshop you make a lesson in the browser, without code, and
          pass it on. What a class handed in is put together on its own page.
        </p>
      </section>
    </Page>
  );
}
