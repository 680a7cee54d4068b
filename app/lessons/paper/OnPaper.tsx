import '../../parts/formulas.css';
import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { AsBuilt } from '../../parts/AsBuilt';
import { layDown } from '../../parts/as-built';
import { lessonPath } from '../../parts/lesson-paths';
import { Page } from '../../parts/Page';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { Watermarked } from '../../parts/Watermarked';
import { loadLesson, loadPrepared, type LessonAddress } from '../load-lessons';
import type { PreparedLesson } from '../prepared';
import { PrintButton } from './PrintButton';

interface OnPaperProps extends LessonAddress {
  /** The last part of its address. */
  name: string;
  lead: string;
  draw: (lesson: PreparedLesson) => ReactElement;
}

/** A lesson to be printed. */
export async function OnPaper({ params, name, lead, draw }: OnPaperProps) {
  const { slug } = await params;
  const lesson = loadPrepared(slug);
  return (
    <Page title={lesson.title} lead={lead}>
      <p className="unprinted">
        <a href={lessonPath(slug)}>Back to the lesson</a> <PrintButton />
      </p>
      <UnitsFrame>
        <Watermarked>
          <AsBuilt name={layDown(`${name}-${slug}`, draw(lesson))} />
        </Watermarked>
      </UnitsFrame>
    </Page>
  );
}

/** What the browser calls it: `No-stop time: answer key`. */
export function titled(what: string) {
  return async ({ params }: LessonAddress): Promise<Metadata> => ({
    title: `${loadLesson((await params).slug).lesson.title}: ${what}`,
  });
}
