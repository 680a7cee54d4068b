import { useDesk } from '../desk-context';
import type { DeskDocument } from '../desk-store';
import { overlaidDive, type OverlaidDive } from '../../pictures/profile/overlaid-dive';

type Overlay = NonNullable<DeskDocument['overlay']>;

const workedOut = new WeakMap<Overlay, { readonly dive: OverlaidDive | undefined }>();

/** The second dive on the desk, worked out once for all pictures; undefined where there is none. */
export function useOverlay(): OverlaidDive | undefined {
  const overlay = useDesk((state) => state.overlay);
  if (!overlay) return undefined;
  let known = workedOut.get(overlay);
  if (!known) workedOut.set(overlay, (known = { dive: overlaidDive(overlay.title, overlay.script) }));
  return known.dive;
}
