import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { base64UrlOfBytes, bytesOfBase64Url } from './base64url';
import { crc32 } from './crc32';

/**
 * Text in a form that fits behind the # of a link: in base64url, four bytes of checksum and the deflated text.
 */
const CHECKSUM_BYTES = 4;
/** Longer links are cut by the programs people send them with. */
export const LONGEST_FRAGMENT = 60_000;
/** Nothing is larger once unpacked, bytes: what swells beyond it was made to. */
export const LARGEST_UNPACKED = 1_000_000;
const INFLATE_STEP = 512;

/**
 * Packs a text; undefined where it is too long for a link. What it shares with `near`, a text that the reader has too, takes
 * next to no room (a preset dictionary, RFC 1951 and RFC 1950, section 2.2); it is unpacked with the same.
 */
export function packText(text: string, near = ''): string | undefined {
  const bytes = strToU8(text);
  if (bytes.length > LARGEST_UNPACKED) return undefined;
  const packed = deflateSync(bytes, { level: 9, ...dictionaryOf(near) });
  const whole = new Uint8Array(CHECKSUM_BYTES + packed.length);
  new DataView(whole.buffer).setUint32(0, checksum(packed, near));
  whole.set(packed, CHECKSUM_BYTES);
  const fragment = base64UrlOfBytes(whole);
  return fragment.length > LONGEST_FRAGMENT ? undefined : fragment;
}

const dictionaryOf = (near: string) => (near === '' ? {} : { dictionary: strToU8(near) });

/** Of what is packed and, where it leans on another text, of that too: a letter changed in either is found. */
function checksum(packed: Uint8Array, near: string): number {
  const leansOn = strToU8(near);
  const whole = new Uint8Array(packed.length + leansOn.length);
  whole.set(packed);
  whole.set(leansOn, packed.length);
  return crc32(whole);
}

/** Why a text could not be unpacked. */
export type Damage = 'long' | 'cut' | 'changed' | 'swollen';

/** Unpacks a text. Never throws. */
export function unpackText(
  packedText: string,
  near = '',
): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly damage: Damage } {
  if (packedText.length > LONGEST_FRAGMENT) return { ok: false, damage: 'long' };
  const bytes = bytesOfBase64Url(packedText);
  if (!bytes || bytes.length <= CHECKSUM_BYTES) return { ok: false, damage: 'cut' };
  const packed = bytes.subarray(CHECKSUM_BYTES);
  if (new DataView(bytes.buffer, bytes.byteOffset).getUint32(0) !== checksum(packed, near))
    return { ok: false, damage: 'changed' };
  const text = inflated(packed, near);
  return text === undefined ? { ok: false, damage: 'swollen' } : { ok: true, text };
}

/** Inflates step by step, so that what swells is stopped before it fills the memory; undefined if it cannot be done. */
function inflated(packed: Uint8Array, near: string): string | undefined {
  const parts: Uint8Array[] = [];
  let total = 0;
  let ended = false;
  const inflate = new Inflate(dictionaryOf(near), (part, final) => {
    parts.push(part);
    total += part.length;
    ended ||= final;
  });
  try {
    for (let at = 0; at < packed.length && total <= LARGEST_UNPACKED; at += INFLATE_STEP) {
      inflate.push(packed.subarray(at, at + INFLATE_STEP), at + INFLATE_STEP >= packed.length);
    }
  } catch {
    return undefined;
  }
  if (!ended || total > LARGEST_UNPACKED) return undefined;
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return strFromU8(whole);
}

/** How to mend a link that came to harm. */
export const DAMAGED = 'Ask for the link again, and copy the whole of it.';
