import { SaxesParser } from 'saxes';
import { MAX_FILE_BYTES, type FileResult, type Hooks } from '../records/record';
import { CANCELLED, refusalOf, RefusedFile, tooLarge } from '../refused-file';
import type { Pieces } from '../text-of-bytes';
import { UddfDocument } from './uddf-document';

/** Deeper nesting than any file of the standard has. */
const DEEPEST_NESTING = 40;
/** A single text longer than this is not a value. */
const LONGEST_TEXT = 1_000_000;

/**
 * Reads a UDDF file (Universal Dive Data Format, versions 2 and 3, with or without its namespace), piece by piece. A
 * document type definition is refused: the standard needs none, and entities defined in one can be made to swell.
 */
export async function readUddf(pieces: Pieces<string>, hooks: Hooks = {}): Promise<FileResult> {
  const document = new UddfDocument();
  const parser = new SaxesParser({ xmlns: false, position: true });
  const path: string[] = [];
  parser.on('doctype', () => {
    throw new RefusedFile(
      'The file brings a document type definition, which is not read here.',
      'Remove the <!DOCTYPE …> part; a UDDF file needs none.',
    );
  });
  parser.on('error', () => {
    throw brokenXml(parser.line, document);
  });
  parser.on('opentag', ({ name, attributes }) => {
    if (path.length >= DEEPEST_NESTING)
      throw new RefusedFile(`Line ${parser.line}: elements are nested too deeply.`, 'Check that this is a UDDF file.');
    const local = localName(name);
    path.push(local);
    document.open(local, attributes);
  });
  parser.on('text', (text) => {
    if (text.length > LONGEST_TEXT)
      throw new RefusedFile(
        `Line ${parser.line}: a text is too long to be a value.`,
        'Check that this is a UDDF file.',
      );
    document.text(text);
  });
  parser.on('cdata', (text) => document.text(text));
  parser.on('closetag', () => {
    document.close(path.pop()!);
  });
  let read = 0;
  try {
    for await (const piece of pieces) {
      if (hooks.cancelled?.()) throw CANCELLED;
      read += piece.length;
      if (read > MAX_FILE_BYTES) throw tooLarge(MAX_FILE_BYTES / 1e6);
      parser.write(piece);
      hooks.onProgress?.(read);
    }
    if (read === 0) throw new RefusedFile('The file is empty.', 'Choose a file that holds a dive.');
    if (path.length > 0) throw cutOff(parser.line, document);
    parser.close();
    return document.result();
  } catch (thrown) {
    return refusalOf(thrown, document.soFar());
  }
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

function cutOff(line: number, document: UddfDocument): RefusedFile {
  return new RefusedFile(
    `The file ends in the middle, at line ${line}, ${document.where()}.`,
    'Copy or export it again. What was read so far can be used meanwhile.',
  );
}

/** What the parser says of it is for programmers: a person is told the places people break such files at. */
function brokenXml(line: number, document: UddfDocument): RefusedFile {
  return new RefusedFile(
    `Line ${line} is not well-formed XML, ${document.where()}: a tag there is not closed or closes another, a value has no quotation marks, or a & or < stands alone.`,
    'Export the file again, or mend that line.',
  );
}
