import { classAsks } from '../../class-asks';
import { lessonSlugs, loadForClass } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

/** The questions of a lesson, for phones of a class: nothing in it says what is right. */
export async function GET(_request: Request, { params }: { params: Promise<{ slug: string }> }): Promise<Response> {
  return Response.json(classAsks(loadForClass((await params).slug)));
}
