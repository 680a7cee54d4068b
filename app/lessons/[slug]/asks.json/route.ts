import { classAsks } from '../../class-asks';
import { loadForClass, type LessonAddress } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;
export { lessonParams as generateStaticParams } from '../../load-lessons';

/** The questions of a lesson, for phones of a class: nothing in it says what is right. */
export async function GET(_request: Request, { params }: LessonAddress): Promise<Response> {
  return Response.json(classAsks(loadForClass((await params).slug)));
}
