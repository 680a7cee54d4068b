import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';

/** Something a reader chooses on a plate: what it is at first, and how it is written into a link and read from one. */
export interface Choice<Value> {
  readonly first: Value;
  readonly write: (value: Value) => string;
  /** A link may hold anything: what makes no sense is refused, and the first value stands. */
  readonly read: (text: string) => Parsed<Value>;
}

export type Choices<Values> = { readonly [Name in keyof Values]: Choice<Values[Name]> };

const FROM_LINK = 'Open the page without what follows its #.';
const noSense = (text: string) => refused(`${text} makes no sense here.`, FROM_LINK);

/** A number between two others. */
export function amount(first: number, least: number, most: number): Choice<number> {
  return {
    first,
    write: (value) => String(Math.round(value * 1e4) / 1e4),
    read: (text) => {
      const value = Number(text);
      return text.trim() !== '' && value >= least && value <= most ? accepted(value) : noSense(text);
    },
  };
}

export function oneOf<Value extends string>(first: Value, all: readonly Value[]): Choice<Value> {
  return {
    first,
    write: (value) => value,
    read: (text) => (all.includes(text as Value) ? accepted(text as Value) : noSense(text)),
  };
}

/** Some of a kind, at most so many. */
export function listOf<Value>(
  { write, read }: Pick<Choice<Value>, 'write' | 'read'>,
  first: readonly Value[],
  most: number,
  least = 0,
): Choice<readonly Value[]> {
  return {
    first,
    write: (values) => values.map(write).join('|'),
    read: (text) => {
      const values: Value[] = [];
      for (const part of text === '' ? [] : text.split('|')) {
        const one = read(part);
        if (!one.ok) return one;
        values.push(one.value);
      }
      return values.length >= least && values.length <= most ? accepted(values) : noSense(text);
    },
  };
}
