import '../../../parts/formulas.css';
import type { Metadata } from 'next';
import { AsBuilt } from '../../../parts/AsBuilt';
import { layDown } from '../../../parts/as-built';
import { Page } from '../../../parts/Page';
import { Watermarked } from '../../../parts/Watermarked';
import { lessonSlugs, loadLesson, loadPrepared } from '../../load-lessons';
import { lessonPath } from '../../../parts/lesson-paths';
import { PrintButton } from '../../PrintButton';
import { WholeText } from '../../WholeText';
import { UnitsFrame } from '../../../parts/prose/UnitsFrame';

interface KeyPageProps {
  params: Promise<{ slug: string }>;
}

export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

export async function generateMetadata({ params }: KeyPageProps): Promise<Metadata> {
  return { title: `${loadLesson((await params).slug).lesson.title}: answer key` };
}

/** A lesson on paper for whoever teaches it: answers, reasons and notes. */
export default async function KeyPage({ params }: KeyPageProps) {
  const { slug } = await params;
  const lesson = loadPrepared(slug);
  return (
    <Page title={lesson.title} lead="Answer key">
      <p className="unprinted">
        <a href={lessonPath(slug)}>Back to the lesson</a> <PrintButton />
      </p>
      <UnitsFrame>
        <Watermarked>
          <AsBuilt name={layDown(`key-${slug}`, <WholeText lesson={lesson} notes />)} />
        </Watermarked>
      </UnitsFrame>
    </Page>
  );
}
