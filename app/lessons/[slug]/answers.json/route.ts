import { classAnswers } from '../../class-asks';
import { loadForClass, type LessonAddress } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;
export { lessonParams as generateStaticParams } from '../../load-lessons';

/** What is right of a lesson’s questions and why, for the teacher of a class, and for phones once it is told. */
export async function GET(_request: Request, { params }: LessonAddress): Promise<Response> {
  return Response.json(classAnswers(loadForClass((await params).slug)));
}
