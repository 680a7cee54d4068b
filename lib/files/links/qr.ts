import { encode } from 'uqr';
import { cautions } from '../../../content/cautions';
import { refused, accepted, type Parsed } from '../../quantity/parsed';

/** A QR code (ISO/IEC 18004) as one path of unit squares in a square of `size`, quiet zone included. */
export interface QrPicture {
  readonly size: number;
  /** For the `d` of an SVG path, to be filled dark on a light ground. */
  readonly path: string;
  /** Words that go under it wherever it is shown or printed. */
  readonly caption: string;
}

/** Light modules around the code, as the standard asks. */
const QUIET_ZONE = 4;
/** Bytes the largest code (version 40, level L) holds. */
const MOST_BYTES = 2953;

/** Draws a link as a QR code. */
export function qrPicture(link: string): Parsed<QrPicture> {
  const bytes = new TextEncoder().encode(link).length;
  if (bytes > MOST_BYTES) {
    return refused(
      `The link has ${bytes} characters; a QR code holds at most ${MOST_BYTES}.`,
      'Send the link itself, or export the dive as a file.',
    );
  }
  const { data, size } = encode(link, { ecc: 'L', border: QUIET_ZONE, boostEcc: true });
  const parts: string[] = [];
  data.forEach((row, y) => {
    for (let x = 0; x < size; x += 1) {
      if (!row[x]) continue;
      const from = x;
      while (x + 1 < size && row[x + 1]) x += 1;
      parts.push(`M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`);
    }
  });
  return accepted({ size, path: parts.join(''), caption: cautions.general });
}
