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

interface TextPageProps {
  params: Promise<{ slug: string }>;
}

export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

export async function generateMetadata({ params }: TextPageProps): Promise<Metadata> {
  return { title: `${loadLesson((await params).slug).lesson.title}: the whole lesson as text` };
}

/** A whole lesson on one page, every answer in place. No script of it reaches the reader. */
export default async function TextPage({ params }: TextPageProps) {
  const { slug } = await params;
  const lesson = loadPrepared(slug);
  return (
    <Page title={lesson.title} lead="The whole lesson as text">
      <p className="unprinted">
        <a href={lessonPath(slug)}>Back to the lesson</a> <PrintButton />
      </p>
      <UnitsFrame>
        <Watermarked>
          <AsBuilt name={layDown(`text-${slug}`, <WholeText lesson={lesson} notes={false} />)} />
        </Watermarked>
      </UnitsFrame>
    </Page>
  );
}
