import type { Decoded } from '@/lib/files/links/share-link';
import { deskViewSchema, type DeskView } from '../../stage/desk-view';

/** What follows the # of an address, where it is not the name of a place on the page. */
export function linkInAddress(): string | undefined {
  const name = location.hash.slice(1);
  return name === '' || document.getElementById(name) ? undefined : name;
}

export async function readLink(fragment: string): Promise<Decoded<DeskView>> {
  try {
    const { decodeState } = await import('@/lib/files/links/share-link');
    return decodeState(fragment, deskViewSchema);
  } catch {
    return {
      ok: false,
      what: 'The part of the page that opens links could not be loaded.',
      mend: 'Reload the page while you are online.',
    };
  }
}

/** Takes the link out of the address once the desk is no longer what it says, so that a reload finds the newer work. */
export function clearAddress(): void {
  history.replaceState(history.state, '', location.pathname + location.search);
}
