import '../../parts/formulas.css';
import type { Metadata } from 'next';
import { Page } from '../../parts/Page';
import { lessonSlugs, loadLesson, loadPrepared } from '../load-lessons';
import { keyPath, lessonPath, sheetPath, teachPath, textPath, yamlPath } from '../../parts/lesson-paths';
import { LessonPlayer } from '../player/LessonPlayer';
import styles from './lesson.module.css';

interface LessonPageProps {
  params: Promise<{ slug: string }>;
}

export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

export async function generateMetadata({ params }: LessonPageProps): Promise<Metadata> {
  const { title, summary } = loadLesson((await params).slug).lesson;
  return { title, description: summary };
}

/** One lesson: its texts are set and its answers worked out at build time; the player is what the browser adds. */
export default async function LessonPage({ params }: LessonPageProps) {
  const { slug } = await params;
  const lesson = loadPrepared(slug);
  const slugs = lessonSlugs();
  const after = slugs[slugs.indexOf(slug) + 1];
  return (
    <Page
      title={lesson.title}
      lead={`${lesson.number === undefined ? 'Lesson' : `Lesson ${lesson.number}`} · ${lesson.level} · about ${lesson.minutes} min`}
    >
      <noscript>
        <p>
          The player needs scripts, which this browser does not run.{' '}
          <a href={textPath(slug)}>Read the lesson as one page</a> instead.
        </p>
      </noscript>
      <LessonPlayer
        lesson={lesson}
        next={after === undefined ? undefined : { path: lessonPath(after), title: loadLesson(after).lesson.title }}
      />
      <nav aria-label="This lesson on paper" className={`${styles.papers} unprinted`}>
        <a href={sheetPath(slug)}>Student sheet</a>
        <a href={keyPath(slug)}>Answer key with notes</a>
        <a href={textPath(slug)}>The whole lesson as text</a>
        <a href={teachPath(slug)}>Teach it to a class with phones</a>
        <a href={yamlPath(slug)} download={`${slug}.yaml`}>
          The lesson as a file
        </a>
      </nav>
    </Page>
  );
}
