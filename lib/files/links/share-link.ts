import * as z from 'zod';
import { MOST_CHARACTERS } from '../../dive/script';
import { DAMAGED, LONGEST_FRAGMENT, packText, unpackText } from './packed-text';

/** A link's state after the #: `1.` and the state as JSON, packed. The number is the version of the format. */
const VERSION = '1';

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

export type Encoded =
  | { readonly ok: true; readonly fragment: string }
  | { readonly ok: false; readonly what: string; readonly mend: string };

export type Decoded<View> =
  | {
      readonly ok: true;
      readonly state: SharedState<View>;
      /** What of the link could not be used, if anything. */ readonly note: string | undefined;
    }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** Packs a state into the part of a link after the #. */
export function encodeState(state: SharedState): Encoded {
  const { script, title, view } = state;
  const packed = script.length > MOST_CHARACTERS ? undefined : packText(JSON.stringify({ script, title, view }));
  const fragment = `${VERSION}.${packed}`;
  if (packed === undefined || fragment.length > LONGEST_FRAGMENT) {
    return { ok: false, what: 'This dive is too long for a link.', mend: 'Export it as a file and send that instead.' };
  }
  return { ok: true, fragment };
}

/**
 * Unpacks the part of a link after the #, with or without it. Never throws. A view that does not fit its schema is left
 * out and told of: the dive is what matters.
 */
export function decodeState<View = unknown>(fragment: string, viewSchema?: z.ZodType<View>): Decoded<View> {
  const text = fragment.replace(/^#/, '').trim();
  const version = /^(\d{1,4})\./.exec(text)?.[1];
  if (text === '')
    return { ok: false, what: 'The link carries no dive.', mend: 'Ask for the whole link, with what follows the #.' };
  if (version === undefined) return { ok: false, what: 'This is not a link to a dive.', mend: DAMAGED };
  if (version !== VERSION) {
    const newer = Number(version) > Number(VERSION);
    return {
      ok: false,
      what: `The link is of version ${version}, and version ${VERSION} is read here.`,
      mend: newer ? 'Reload this page to get the newest version, and open the link again.' : DAMAGED,
    };
  }
  if (text.length > LONGEST_FRAGMENT)
    return { ok: false, what: 'The link is longer than any that is made here.', mend: DAMAGED };
  const unpacked = unpackText(text.slice(version.length + 1));
  if (unpacked.ok) return stateOf(unpacked.text, viewSchema);
  if (unpacked.damage === 'cut')
    return { ok: false, what: 'The link is cut off or has characters that do not belong in it.', mend: DAMAGED };
  if (unpacked.damage === 'changed')
    return { ok: false, what: 'The link was changed or cut on the way: its checksum does not fit.', mend: DAMAGED };
  return stateOf(undefined, viewSchema);
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
    return {
      ok: true,
      state: { script, title },
      note: 'The link also says what to show, in a way that is not understood here. The dive itself is whole.',
    };
  } catch {
    // Not JSON, or nested beyond what can be read.
    return refusal;
  }
}
