import type { Dive } from '@/lib/dive/dive';
import { parseScript } from '@/lib/dive/script';

type Read<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly what: string };

/** What was read, for a test that stands on it; throws what is wrong with it. */
export function valueOf<Value>(read: Read<Value>): Value {
  if (!read.ok) throw new Error(read.what);
  return read.value;
}

/** The dive a script makes; throws what is wrong with it. */
export function diveOf(script: string): Dive {
  const read = parseScript(script);
  if (!read.ok)
    throw new Error(`${read.errors.map(({ message, mend }) => `${message} ${mend}`).join('\n')}\n${script}`);
  return read.dive;
}

/** What is wrong with a script. */
export function errorsOf(script: string) {
  const read = parseScript(script);
  return read.ok ? [] : read.errors;
}

/** The first error and the very text it points at. */
export function errorIn(script: string) {
  const [error] = errorsOf(script);
  if (!error) return undefined;
  return { ...error, at: script.split('\n')[error.line - 1]!.slice(error.column - 1, error.endColumn - 1) };
}
