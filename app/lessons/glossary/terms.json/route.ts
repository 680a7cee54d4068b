import { shippedPaths } from '../../load-lessons';
import { renderLine } from '../../prose';
import { readGlossary } from '../../read-content';
import type { TermsById } from '../fetch-terms';

export const dynamic = 'force-static';

/** The terms of the glossary for a lesson that opens one in place. */
export function GET(): Response {
  const told: TermsById = Object.fromEntries(
    readGlossary().map(({ id, term, also, means }) => [id, { term, also, html: renderLine(means, shippedPaths) }]),
  );
  return Response.json(told);
}
