import { lessonFile } from '@/lib/files/links/lesson-file';
import { lessonSlugs, loadLesson } from '../../load-lessons';

export const dynamic = 'force-static';
export const dynamicParams = false;

export function generateStaticParams() {
  return lessonSlugs().map((slug) => ({ slug }));
}

/** The lesson as it stands in its file, under the caution, to begin one's own with. */
export async function GET(_request: Request, { params }: { params: Promise<{ slug: string }> }): Promise<Response> {
  return new Response(lessonFile(loadLesson((await params).slug).text), {
    headers: { 'content-type': 'application/yaml; charset=utf-8' },
  });
}
