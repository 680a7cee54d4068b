/** Terms by id, each with its meaning set as HTML. */
export type ToldTerms = Readonly<Record<string, { term: string; also: readonly string[]; html: string }>>;

let told: Promise<ToldTerms> | undefined;

/** The terms, fetched once; asked for anew after a failure. */
export function toldTerms(path: string): Promise<ToldTerms> {
  told ??= fetch(path)
    .then((answer) => {
      if (!answer.ok) throw new Error(`the terms answered ${answer.status}`);
      return answer.json() as Promise<ToldTerms>;
    })
    .catch((fault: unknown) => {
      told = undefined;
      throw fault;
    });
  return told;
}
