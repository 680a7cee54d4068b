import type { LessonAddress } from '../../load-lessons';
import { OnPaper, titled } from '../../paper/OnPaper';
import { StudentSheet } from '../../paper/StudentSheet';

export { lessonParams as generateStaticParams } from '../../load-lessons';
export const dynamicParams = false;
export const generateMetadata = titled('student sheet');

/** A lesson on paper for the student. */
export default function SheetPage({ params }: LessonAddress) {
  return (
    <OnPaper params={params} name="sheet" lead="Student sheet" draw={(lesson) => <StudentSheet lesson={lesson} />} />
  );
}
