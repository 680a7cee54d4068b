import '../../../parts/formulas.css';
import type { Metadata } from 'next';
import { AsBuilt } from '../../../parts/AsBuilt';
import { layDown } from '../../../parts/as-built';
import { Page } from '../../../parts/Page';
import { Watermarked } from '../../../parts/Watermarked';
import { lessonSlugs, loadLesson, loadPrepared } from '../../load-lessons';
import { lessonPath } from '../../../parts/lesson-paths';
import { PrintButton } from '../../PrintButton';
import { StudentSheet } from '../../StudentSheet';
import { UnitsFrame } from '../../../parts/prose/UnitsFrame';

interface SheetPageProps {
  params: Promise<{ slug: string }>;
}

export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

export async function generateMetadata({ params }: SheetPageProps): Promise<Metadata> {
  return { title: `${loadLesson((await params).slug).lesson.title}: student sheet` };
}

/** A lesson on paper for the student. */
export default async function SheetPage({ params }: SheetPageProps) {
  const { slug } = await params;
  const lesson = loadPrepared(slug);
  return (
    <Page title={lesson.title} lead="Student sheet">
      <p className="unprinted">
        <a href={lessonPath(slug)}>Back to the lesson</a> <PrintButton />
      </p>
      <UnitsFrame>
        <Watermarked>
          <AsBuilt name={layDown(`sheet-${slug}`, <StudentSheet lesson={lesson} />)} />
        </Watermarked>
      </UnitsFrame>
    </Page>
  );
}
