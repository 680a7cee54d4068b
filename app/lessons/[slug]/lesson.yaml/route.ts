import { lessonFile } from '@/lib/files/links/lesson-file';
import { loadLesson, type LessonAddress } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;
export { lessonParams as generateStaticParams } from '../../load-lessons';

/** The lesson as it stands in its file, under the caution, to begin one's own with. */
export async function GET(_request: Request, { params }: LessonAddress): Promise<Response> {
  return new Response(lessonFile(loadLesson((await params).slug).text), {
    headers: { 'content-type': 'application/yaml; charset=utf-8' },
  });
}
