import { loadLessons } from '../load-lessons';

export const dynamic = 'force-static';

/** The shipped lessons by name, for a class to be asked from. */
export function GET(): Response {
  return Response.json(loadLessons().map(({ slug, lesson: { title } }) => ({ slug, title })));
}
