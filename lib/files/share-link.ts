import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import * as z from 'zod';
import { MOST_CHARACTERS } from '../dive/script';
import { bytesOfBase64Url, base64UrlOfBytes } from './base64url';
import { crc32 } from './crc32';

/**
 * A link's state after the #: `1.` and, in base64url, four bytes of checksum and the deflated JSON. The number is the
 * version of the format.
 */
const VERSION = '1';
const CHECKSUM_BYTES = 4;
/** Longer links are cut by the programs people send them with. */
export const LONGEST_FRAGMENT = 60_000;
/** No state is larger once unpacked, bytes: what swells beyond it was made to. */
const LARGEST_STATE = 1_000_000;
const INFLATE_STEP = 512;

/** What a link does not carry, for the place where it is made. */
export const LINK_LEAVES_OUT =
  'The link carries the dive, its settings and what is on the screen. It leaves out your other saved dives, your answers and notes, and the file a dive was brought from.';

const stateSchema = z.object({
  script: z.string().max(MOST_CHARACTERS),
  title: z.string().max(200).optional(),
  view: z.unknown().optional(),
});

/** What a link carries: the script, its title, and what the screen shows, which only the screen knows the shape of. */
export interface SharedState<View = unknown> {
  readonly script: string;
  readonly title?: string | undefined;
  readonly view?: View | undefined;
}

export type Encoded = { readonly ok: true; readonly fragment: string } | { readonly ok: false; readonly what: string; readonly mend: string };

export type Decoded<View> =
  | { readonly ok: true; readonly state: SharedState<View>; /** What of the link could not be used, if anything. */ readonly note: string | undefined }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** Packs a state into the part of a link after the #. */
export function encodeState(state: SharedState): Encoded {
  const { script, title, view } = state;
  const json = strToU8(JSON.stringify({ script, title, view }));
  const packed = deflateSync(json, { level: 9 });
  const bytes = new Uint8Array(CHECKSUM_BYTES + packed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(packed));
  bytes.set(packed, CHECKSUM_BYTES);
  const fragment = `${VERSION}.${base64UrlOfBytes(bytes)}`;
  if (fragment.length > LONGEST_FRAGMENT || json.length > LARGEST_STATE || script.length > MOST_CHARACTERS) {
    return { ok: false, what: 'This dive is too long for a link.', mend: 'Export it as a file and send that instead.' };
  }
  return { ok: true, fragment };
}

const DAMAGED = 'Ask for the link again, and copy the whole of it.';

/**
 * Unpacks the part of a link after the #, with or without it. Never throws. A view that does not fit its schema is left
 * out and told of: the dive is what matters.
 */
export function decodeState<View = unknown>(fragment: string, viewSchema?: z.ZodType<View>): Decoded<View> {
  const text = fragment.replace(/^#/, '').trim();
  const version = /^(\d{1,4})\./.exec(text)?.[1];
  if (text === '') return { ok: false, what: 'The link carries no dive.', mend: 'Ask for the whole link, with what follows the #.' };
  if (version === undefined) return { ok: false, what: 'This is not a link to a dive.', mend: DAMAGED };
  if (version !== VERSION) {
    const newer = Number(version) > Number(VERSION);
    return { ok: false, what: `The link is of version ${version}, and version ${VERSION} is read here.`, mend: newer ? 'Reload this page to get the newest version, and open the link again.' : DAMAGED };
  }
  if (text.length > LONGEST_FRAGMENT) return { ok: false, what: 'The link is longer than any that is made here.', mend: DAMAGED };
  const bytes = bytesOfBase64Url(text.slice(version.length + 1));
  if (!bytes || bytes.length <= CHECKSUM_BYTES) return { ok: false, what: 'The link is cut off or has characters that do not belong in it.', mend: DAMAGED };
  const packed = bytes.subarray(CHECKSUM_BYTES);
  if (new DataView(bytes.buffer, bytes.byteOffset).getUint32(0) !== crc32(packed)) {
    return { ok: false, what: 'The link was changed or cut on the way: its checksum does not fit.', mend: DAMAGED };
  }
  return stateOf(inflated(packed), viewSchema);
}

function stateOf<View>(json: string | undefined, viewSchema: z.ZodType<View> | undefined): Decoded<View> {
  const refusal = { ok: false, what: 'What the link carries is not a dive.', mend: DAMAGED } as const;
  if (json === undefined) return refusal;
  try {
    const read = stateSchema.safeParse(JSON.parse(json));
    if (!read.success) return refusal;
    const { script, title, view } = read.data;
    if (view === undefined || !viewSchema) return { ok: true, state: { script, title }, note: undefined };
    const seen = viewSchema.safeParse(view);
    if (seen.success) return { ok: true, state: { script, title, view: seen.data }, note: undefined };
    return { ok: true, state: { script, title }, note: 'The link also says what to show, in a way that is not understood here. The dive itself is whole.' };
  } catch {
    // Not JSON, or nested beyond what can be read.
    return refusal;
  }
}

/** Inflates step by step, so that what swells is stopped before it fills the memory; undefined if it cannot be done. */
function inflated(packed: Uint8Array): string | undefined {
  const parts: Uint8Array[] = [];
  let total = 0;
  let ended = false;
  const inflate = new Inflate((part, final) => {
    parts.push(part);
    total += part.length;
    ended ||= final;
  });
  try {
    for (let at = 0; at < packed.length && total <= LARGEST_STATE; at += INFLATE_STEP) {
      inflate.push(packed.subarray(at, at + INFLATE_STEP), at + INFLATE_STEP >= packed.length);
    }
  } catch {
    return undefined;
  }
  if (!ended || total > LARGEST_STATE) return undefined;
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return strFromU8(whole);
}
