/** Terms by id, each with its meaning set as HTML. */
export type TermsById = Readonly<Record<string, { term: string; also: readonly string[]; html: string }>>;

let fetched: Promise<TermsById> | undefined;

/** The terms, fetched once; asked for anew after a failure. */
export function fetchTerms(path: string): Promise<TermsById> {
  fetched ??= fetch(path)
    .then((answer) => {
      if (!answer.ok) throw new Error(`the terms answered ${answer.status}`);
      return answer.json() as Promise<TermsById>;
    })
    .catch((fault: unknown) => {
      fetched = undefined;
      throw fault;
    });
  return fetched;
}
