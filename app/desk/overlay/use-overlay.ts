import { useMemo } from 'react';
import { useDesk } from '../desk-context';
import { overlaidDive, type OverlaidDive } from './overlaid-dive';

/** The second dive on the desk, worked out once; undefined where there is none. */
export function useOverlay(): OverlaidDive | undefined {
  const overlay = useDesk((state) => state.overlay);
  return useMemo(() => overlay && overlaidDive(overlay.title, overlay.script), [overlay]);
}
