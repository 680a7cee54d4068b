import { classAnswers } from '../../class-asks';
import { lessonSlugs, loadForClass } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

/** What is right of a lesson’s questions and why, for the teacher of a class, and for phones once it is told. */
export async function GET(_request: Request, { params }: { params: Promise<{ slug: string }> }): Promise<Response> {
  return Response.json(classAnswers(loadForClass((await params).slug)));
}
