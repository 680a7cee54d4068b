import { useDeferredValue, useMemo } from 'react';
import { useDesk } from '../desk-context';
import type { DeskDocument } from '../desk-state';
import { overlaidDive, type OverlaidDive } from '../../pictures/profile/overlaid-dive';

type Overlay = Pick<NonNullable<DeskDocument['overlay']>, 'title' | 'script'>;

const workedOut = new WeakMap<Overlay, { readonly dive: OverlaidDive | undefined }>();

function overlaid(overlay: Overlay): OverlaidDive | undefined {
  let known = workedOut.get(overlay);
  if (!known) workedOut.set(overlay, (known = { dive: overlaidDive(overlay.title, overlay.script) }));
  return known.dive;
}

/** The second dive on the desk, worked out once for all pictures; undefined where there is none. */
export function useOverlay(): OverlaidDive | undefined {
  const overlay = useDesk((state) => state.overlay);
  return overlay && overlaid(overlay);
}

/** Ways out drawn beside the dive, worked out once for all pictures, when the press that asked for them is painted. */
export function useShownWays(): readonly OverlaidDive[] {
  const ways = useDeferredValue(useDesk((state) => state.shownWays));
  return useMemo(() => ways.map(overlaid).filter((dive) => dive !== undefined), [ways]);
}
