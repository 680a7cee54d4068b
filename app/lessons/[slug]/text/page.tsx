import type { LessonAddress } from '../../load-lessons';
import { OnPaper, titled } from '../../paper/OnPaper';
import { WholeText } from '../../paper/WholeText';

export { lessonParams as generateStaticParams } from '../../load-lessons';
export const dynamicParams = false;
export const generateMetadata = titled('the whole lesson as text');

/** A whole lesson on one page, every answer in place. No script of it reaches the reader. */
export default function TextPage({ params }: LessonAddress) {
  return (
    <OnPaper
      params={params}
      name="text"
      lead="The whole lesson as text"
      draw={(lesson) => <WholeText lesson={lesson} notes={false} />}
    />
  );
}
