import { Buffer } from 'node:buffer';
import { describe, expect, it } from 'vitest';
import { RefusedFile } from '@/lib/files/refused-file';
import { encodingOf, kindOfText, readHead, textOfBytes } from '@/lib/files/text-of-bytes';

async function decoded(bytes: Uint8Array, size = 5): Promise<string> {
  const pieces: Uint8Array[] = [];
  for (let at = 0; at < bytes.length; at += size) pieces.push(bytes.subarray(at, at + size));
  let text = '';
  for await (const piece of textOfBytes(pieces)) text += piece;
  return text;
}

const text = 'Zeit;Tiefe\n0;0,0\n10;1,5\nProfondità';
const big = (swapped: string) => Buffer.from(swapped, 'utf16le').swap16();

describe('reading bytes as text', () => {
  it.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with its mark', Buffer.from(`\uFEFF${text}`)],
    ['UTF-16, small end first', Buffer.from(`\uFEFF${text}`, 'utf16le')],
    ['UTF-16, big end first', big(`\uFEFF${text}`)],
    ['UTF-16 without its mark', Buffer.from(text, 'utf16le')],
    ['UTF-16, big end first, without its mark', big(text)],
    ['Latin-1', Buffer.from(text, 'latin1')],
  ])('reads %s however it is cut', async (_, bytes) => {
    for (const size of [1, 3, 1000]) expect(await decoded(bytes, size)).toBe(text);
  });

  it('says when it took the letters for Western European ones', () => {
    expect(encodingOf(Buffer.from(text, 'latin1')).note).toContain('not in UTF-8');
    expect(encodingOf(Buffer.from(text)).note).toBeUndefined();
  });

  it('reads XML in the encoding it declares', async () => {
    const xml = '<?xml version="1.0" encoding="ISO-8859-1"?><uddf>é</uddf>';
    expect(await decoded(Buffer.from(xml, 'latin1'))).toBe(xml);
  });

  it.each([
    [
      'an encoding nobody reads here',
      Buffer.from('<?xml version="1.0" encoding="EBCDIC-CP-US"?><uddf/>'),
      'ebcdic-cp-us',
    ],
    [
      'a claim of UTF-16 that is plainly not so',
      Buffer.from('<?xml version="1.0" encoding="UTF-16"?><uddf/>'),
      'utf-16',
    ],
  ])('refuses XML with %s', (_, bytes, named) => {
    expect(() => encodingOf(bytes)).toThrowError(new RegExp(`“${named}”`));
  });

  it('refuses XML with a byte that is not in its encoding, also far into the file', async () => {
    const start = Buffer.from(`<?xml version="1.0" encoding="UTF-8"?><uddf>${' '.repeat(100_000)}`);
    await expect(decoded(Buffer.concat([start, Buffer.from([0xe9, 0x20])]), 4096)).rejects.toThrowError(
      /UTF-8.*does not belong/,
    );
  });

  it.each([
    ['zip archive', [0x50, 0x4b, 0x03, 0x04, 0x14]],
    ['compressed', [0x1f, 0x8b, 0x08]],
    ['PDF', [0x25, 0x50, 0x44, 0x46, 0x2d]],
    ['picture', [0x89, 0x50, 0x4e, 0x47]],
    ['not text', [0x01, 0x00, 0x00, 0x00, 0x07, 0x00, 0x00, 0x03]],
    ['empty', []],
  ])('refuses a file that is %s and says what to do instead', (what, bytes) => {
    try {
      readHead(Uint8Array.from(bytes));
      expect.unreachable();
    } catch (thrown) {
      expect(thrown).toBeInstanceOf(RefusedFile);
      expect((thrown as RefusedFile).what).toContain(what);
      expect((thrown as RefusedFile).mend).not.toBe('');
    }
  });

  it('refuses 200 MB without taking it in', async () => {
    const megabyte = new Uint8Array(1_000_000).fill(0x31);
    let given = 0;
    function* file() {
      for (; given < 200; given += 1) yield megabyte;
    }
    const read = async () => {
      for await (const piece of textOfBytes(file())) expect(piece.length).toBeLessThanOrEqual(1_000_000);
    };
    await expect(read()).rejects.toThrowError('The file is larger than 150 MB.');
    expect(given).toBeLessThan(152);
  });

  it('knows XML from CSV by the first mark', () => {
    expect(kindOfText('\n <?xml version="1.0"?>')).toBe('uddf');
    expect(kindOfText('time,depth')).toBe('csv');
  });
});
