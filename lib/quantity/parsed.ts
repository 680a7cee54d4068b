/** What became of a text someone typed: a value, or what is wrong with it and how to mend it. */
export type Parsed<T> = { readonly ok: true; readonly value: T } | Refusal;

export interface Refusal {
  readonly ok: false;
  readonly what: string;
  readonly mend: string;
  /** The offending part of the text, offsets from and to (exclusive); the whole of it when left out. */
  readonly at?: readonly [number, number];
  /** Texts of which any, put in place of the offending part, mends it. */
  readonly instead?: readonly string[];
}

/** What was read, as the result of reading it. */
export function accepted<T>(value: T): Parsed<T> {
  return { ok: true, value };
}

/** A refusal: what is wrong and how to mend it, each a sentence, and where in the text, in characters. */
export function refused(what: string, mend: string, at?: readonly [number, number]): Refusal {
  return at ? { ok: false, what, mend, at } : { ok: false, what, mend };
}

/** The same with what to write instead: each text mends it. */
export function refusedFor(
  what: string,
  mend: string,
  instead: readonly string[],
  at?: readonly [number, number],
): Refusal {
  return { ...refused(what, mend, at), instead };
}

const LONGEST_QUOTE = 40;

/** A typed text within quotation marks, cut short when it is long. */
export function quoted(text: string): string {
  const trimmed = text.trim();
  // Cut between code points, so that no half of a surrogate pair is shown.
  const short =
    trimmed.length > LONGEST_QUOTE ? `${[...trimmed.slice(0, LONGEST_QUOTE)].slice(0, -1).join('')}…` : trimmed;
  return `“${short}”`;
}
