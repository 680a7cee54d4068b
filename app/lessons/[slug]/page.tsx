import '../../parts/formulas.css';
import type { Metadata } from 'next';
import { lessonSlugs, loadLesson, loadPrepared, type LessonAddress } from '../load-lessons';
import { lessonPath, textPath } from '../../parts/lesson-paths';
import { RENAMED } from '@/lib/lesson/renamed';
import { MovedLesson } from '../MovedLesson';
import { LessonPlayer } from '../player/LessonPlayer';

export const dynamicParams = false;

export function generateStaticParams() {
  return [...lessonSlugs(), ...Object.keys(RENAMED)].map((slug) => ({ slug }));
}

export async function generateMetadata({ params }: LessonAddress): Promise<Metadata> {
  const { slug } = await params;
  const { title, summary } = loadLesson(RENAMED[slug] ?? slug).lesson;
  return { title, description: summary };
}

/** One lesson: its texts are set and its answers worked out at build time; the player is what the browser adds. */
export default async function LessonPage({ params }: LessonAddress) {
  const { slug } = await params;
  const moved = RENAMED[slug];
  if (moved !== undefined) return <MovedLesson path={lessonPath(moved)} title={loadLesson(moved).lesson.title} />;
  const lesson = loadPrepared(slug);
  const slugs = lessonSlugs();
  const after = slugs[slugs.indexOf(slug) + 1];
  return (
    <>
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
    </>
  );
}
