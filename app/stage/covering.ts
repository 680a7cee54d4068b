import { useDesk } from './desk-context';
import type { ReadingId } from './reading-ids';

/** Whether a reading is covered, or left out where `only` some are shown, and what covers and uncovers it. */
export function useCovering(only?: readonly ReadingId[]) {
  const covered = useDesk((state) => state.covered);
  const change = useDesk((state) => state.change);
  return (id: ReadingId) => ({
    id,
    covered: covered.includes(id),
    absent: only !== undefined && !only.includes(id),
    onUncover: () => change({ covered: covered.filter((other) => other !== id) }),
    onCover: () => change({ covered: [...covered, id] }),
  });
}
