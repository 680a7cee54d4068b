/** First and last byte of a part of a file, both counted from 0 and both in it. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/**
 * The part of `length` bytes that a Range field asks for (RFC 9110, section 14): `none` where it asks for no part, for
 * several at once or in a way that is not understood, so that the whole is the answer; `beyond` where there is no such part.
 */
export function byteRange(field: string | undefined, length: number): ByteRange | 'none' | 'beyond' {
  const [, first, last] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(field?.trim() ?? '') ?? [];
  if (first === undefined || last === undefined || (first === '' && last === '')) return 'none';
  if (first === '')
    return Number(last) === 0 || length === 0 ? 'beyond' : { from: Math.max(0, length - Number(last)), to: length - 1 };
  // One that ends before it begins is no range at all: the field is passed over.
  if (last !== '' && Number(last) < Number(first)) return 'none';
  if (Number(first) >= length) return 'beyond';
  return { from: Number(first), to: last === '' ? length - 1 : Math.min(length - 1, Number(last)) };
}
