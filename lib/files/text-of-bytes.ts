import { MAX_FILE_BYTES } from './records/record';
import { RefusedFile, tooLarge } from './refused-file';

export type FileKind = 'csv' | 'uddf';

/** How the bytes of a file stand for text. */
export interface Encoding {
  readonly label: string;
  /** Bytes before the text begins. */
  readonly skip: number;
  /** What to tell the reader about it, if anything. */
  readonly note: string | undefined;
}

/** So many bytes tell what a file is. */
export const HEAD_BYTES = 65_536;

const KNOWN: ReadonlyMap<string, string> = new Map([
  ['utf-8', 'utf-8'],
  ['utf8', 'utf-8'],
  ['us-ascii', 'utf-8'],
  ['ascii', 'utf-8'],
  ['utf-16', 'utf-16le'],
  ['utf-16le', 'utf-16le'],
  ['utf-16be', 'utf-16be'],
  ['iso-8859-1', 'windows-1252'],
  ['iso-8859-15', 'iso-8859-15'],
  ['windows-1252', 'windows-1252'],
]);

/** What other kinds of file begin with: told by name, so that the mend can be told too. */
const SIGNATURES: readonly (readonly [readonly number[], string, string])[] = [
  [
    [0x50, 0x4b, 0x03, 0x04],
    'This is a zip archive or a spreadsheet.',
    'Unpack it, or save the sheet as CSV, and open that.',
  ],
  [[0x1f, 0x8b], 'This file is compressed (gzip).', 'Unpack it and open what is inside.'],
  [[0x25, 0x50, 0x44, 0x46], 'This is a PDF.', 'Export the dive as UDDF or CSV instead.'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'This is an old spreadsheet or document.', 'Save it as CSV and open that.'],
  [[0x89, 0x50, 0x4e, 0x47], 'This is a picture.', 'Export the dive as UDDF or CSV instead.'],
];

/**
 * Finds out from the first bytes of a file (`HEAD_BYTES` of them will do) how to read it as text.
 * Throws RefusedFile where it is not text at all or is in an encoding that is not read.
 */
export function encodingOf(head: Uint8Array): Encoding {
  if (head.length === 0) throw new RefusedFile('The file is empty.', 'Choose a file that holds a dive.');
  for (const [bytes, what, mend] of SIGNATURES) {
    if (bytes.every((byte, i) => head[i] === byte)) throw new RefusedFile(what, mend);
  }
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { label: 'utf-8', skip: 3, note: undefined };
  if (head[0] === 0xff && head[1] === 0xfe) return { label: 'utf-16le', skip: 2, note: undefined };
  if (head[0] === 0xfe && head[1] === 0xff) return { label: 'utf-16be', skip: 2, note: undefined };
  const silent = withoutMark(head);
  if (silent) return silent;
  const declared = declaredEncoding(head);
  if (declared !== undefined) {
    const label = KNOWN.get(declared);
    // A file whose declaration can be read byte by byte is not in UTF-16, whatever it says.
    if (label !== undefined && !label.startsWith('utf-16')) return { label, skip: 0, note: undefined };
    throw new RefusedFile(
      `The file says it is in the encoding “${declared}”, which is not read here.`,
      'Save it in UTF-8.',
    );
  }
  if (isUtf8(head)) return { label: 'utf-8', skip: 0, note: undefined };
  return {
    label: 'windows-1252',
    skip: 0,
    note: 'The file is not in UTF-8, so its letters were read as Western European ones. Numbers are not affected.',
  };
}

/** UTF-16 without its mark has a zero in every other byte of plain text; zeros elsewhere are not text. */
function withoutMark(head: Uint8Array): Encoding | undefined {
  let even = 0;
  let odd = 0;
  for (let i = 0; i < head.length; i += 1) {
    if (head[i] !== 0) continue;
    if (i % 2 === 0) even += 1;
    else odd += 1;
  }
  if (even + odd === 0) return undefined;
  const half = head.length / 2;
  if (odd > 0.8 * half && even < 0.1 * half) return { label: 'utf-16le', skip: 0, note: undefined };
  if (even > 0.8 * half && odd < 0.1 * half) return { label: 'utf-16be', skip: 0, note: undefined };
  throw new RefusedFile('The file is not text.', 'Export the dive as UDDF or CSV and open that.');
}

function declaredEncoding(head: Uint8Array): string | undefined {
  const start = String.fromCharCode(...head.subarray(0, 200));
  return /^\s*<\?xml[^>]*\bencoding\s*=\s*["']([^"']*)["']/.exec(start)?.[1]?.toLowerCase();
}

function isUtf8(head: Uint8Array): boolean {
  try {
    // Of a longer file the last character may be cut off, which a stream does not mind.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: head.length >= HEAD_BYTES });
    return true;
  } catch {
    return false;
  }
}

/** What the file is, by the first thing written in it. */
export function kindOfText(head: string): FileKind {
  return /^\s*</.test(head) ? 'uddf' : 'csv';
}

/** The first bytes of a file as text, and what kind of file it is. Throws RefusedFile. */
export function readHead(bytes: Uint8Array): {
  readonly text: string;
  readonly kind: FileKind;
  readonly encoding: Encoding;
} {
  const encoding = encodingOf(bytes.subarray(0, HEAD_BYTES));
  const text = new TextDecoder(encoding.label).decode(bytes.subarray(encoding.skip, HEAD_BYTES), {
    stream: bytes.length >= HEAD_BYTES,
  });
  return { text, kind: kindOfText(text), encoding };
}

export type Pieces<T> = Iterable<T> | AsyncIterable<T>;

/**
 * The bytes of a file, piece by piece, as text. In a UDDF file a byte that is not in its encoding is an error; in a CSV
 * file it can only be in a word, and becomes a �. Throws RefusedFile, also beyond `MAX_FILE_BYTES`.
 */
export async function* textOfBytes(pieces: Pieces<Uint8Array>): AsyncGenerator<string> {
  let decoder: TextDecoder | undefined;
  let head = new Uint8Array(0);
  let total = 0;
  const start = () => {
    const { encoding, kind } = readHead(head);
    decoder = new TextDecoder(encoding.label, { fatal: kind === 'uddf' });
    return head.subarray(encoding.skip);
  };
  const decode = (bytes?: Uint8Array) => {
    try {
      return bytes ? decoder!.decode(bytes, { stream: true }) : decoder!.decode();
    } catch {
      throw new RefusedFile(
        `The file is not all in the encoding it claims (${decoder!.encoding.toUpperCase()}): a byte before number ${total} does not belong.`,
        'Save it in UTF-8, or let its first line name the encoding it is in.',
      );
    }
  };
  for await (const piece of pieces) {
    total += piece.length;
    if (total > MAX_FILE_BYTES) throw tooLarge(MAX_FILE_BYTES / 1e6);
    if (decoder) {
      yield decode(piece);
      continue;
    }
    head = joined(head, piece);
    if (head.length >= HEAD_BYTES) yield decode(start());
  }
  if (!decoder) yield decode(start());
  yield decode();
}

function joined(one: Uint8Array, other: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(one.length + other.length);
  both.set(one);
  both.set(other, one.length);
  return both;
}
