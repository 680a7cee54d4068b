import { refused, type Refusal } from '../../quantity/parsed';

type TokenKind = 'number' | 'word' | 'text' | 'sign' | 'end';

export interface Token {
  readonly kind: TokenKind;
  /** As written; of a text, without its quotation marks. */
  readonly text: string;
  /** Offsets in the expression, from and to (exclusive). */
  readonly at: readonly [number, number];
}

const SPACE = /\s+/y;
const NUMBER = /\d+(?:\.\d+)?|\.\d+/y;
const TEXT = /"([^"]*)"/y;
/** `m/min` and the like are one word; so is `ceiling-clears`. */
const WORD = /(?:m|ft)\/min\b|g\/[Ll]\b|%|[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z][A-Za-z0-9]*)*/y;
const SIGN = /==|!=|<=|>=|[<>+\-−*×/÷(),≤≥≠]/y;
const SAME_SIGN: Readonly<Record<string, string>> = { '−': '-', '×': '*', '÷': '/', '≤': '<=', '≥': '>=', '≠': '!=' };

export const MOST_TOKENS = 200;

/** Cuts an expression into its tokens, the last of them the end. */
export function tokensOf(text: string): { readonly ok: true; readonly tokens: readonly Token[] } | Refusal {
  const tokens: Token[] = [];
  let at = 0;
  const found = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  while (at < text.length) {
    const space = found(SPACE);
    if (space) {
      at += space[0].length;
      continue;
    }
    const kinds: readonly (readonly [TokenKind, RegExp])[] = [
      ['number', NUMBER],
      ['text', TEXT],
      ['word', WORD],
      ['sign', SIGN],
    ];
    const hit = kinds.map(([kind, pattern]) => ({ kind, match: found(pattern) })).find(({ match }) => match);
    if (!hit?.match) return strange(text, at);
    const [whole] = hit.match;
    const own = hit.kind === 'text' ? hit.match[1]! : hit.kind === 'sign' ? (SAME_SIGN[whole] ?? whole) : whole;
    tokens.push({ kind: hit.kind, text: own, at: [at, at + whole.length] });
    if (tokens.length > MOST_TOKENS)
      return refused('This expression is too long.', `Write at most ${MOST_TOKENS} words and signs, or cut it in two.`);
    at += whole.length;
  }
  tokens.push({ kind: 'end', text: '', at: [text.length, text.length] });
  return { ok: true, tokens };
}

function strange(text: string, at: number): Refusal {
  const sign = String.fromCodePoint(text.codePointAt(at)!);
  const place: readonly [number, number] = [at, at + sign.length];
  if (sign === '=') return refused('A single = says nothing here.', 'Write == to compare.', place);
  if (sign === '"') return refused('A quotation mark is not closed.', 'Close it after the name of the unit.', place);
  if (sign === '&' || sign === '|') return refused(`“${sign}” is not known here.`, 'Write and, or.', place);
  if (sign === '!') return refused('“!” is not known here.', 'Write not, or != to compare.', place);
  if (sign === '.' || sign === ';')
    return refused(`“${sign}” does not belong here.`, 'Expressions have numbers, facts and + - * / ( ) only.', place);
  return refused(`“${sign}” is not known here.`, 'Expressions have numbers, facts and + - * / ( ) only.', place);
}
