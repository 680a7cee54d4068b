import type { PictureId } from '../../pictures/picture-ids';

/** The pictures that a page of its own has with it; with all of them it would be too heavy for a mail. */
export const CARRIED_PICTURES = [
  'profile',
  'chase',
  'loading',
  'supersaturation',
  'no-stop',
  'log',
  'units',
] as const satisfies readonly PictureId[];

const isCarried = (id: string) => (CARRIED_PICTURES as readonly string[]).includes(id);

/** What a run shows on a page of its own, and what it leaves out; the dive stands in for all where none is carried. */
export function carriedOf(show: readonly string[]): { readonly show: string[]; readonly left: readonly string[] } {
  const shown = show.filter(isCarried);
  return { show: shown.length > 0 ? shown : ['profile'], left: show.filter((id) => !isCarried(id)) };
}
