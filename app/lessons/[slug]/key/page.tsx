import type { LessonAddress } from '../../load-lessons';
import { OnPaper, titled } from '../../paper/OnPaper';
import { WholeText } from '../../paper/WholeText';

export { lessonParams as generateStaticParams } from '../../load-lessons';
export const dynamicParams = false;
export const generateMetadata = titled('answer key');

/** A lesson on paper for whoever teaches it: answers, reasons and notes. */
export default function KeyPage({ params }: LessonAddress) {
  return (
    <OnPaper params={params} name="key" lead="Answer key" draw={(lesson) => <WholeText lesson={lesson} notes />} />
  );
}
