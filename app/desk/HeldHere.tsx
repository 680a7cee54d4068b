'use client';

import { useDesk } from '../stage/desk-context';
import { momentIndexAt, SOMETHING_HAPPENS } from '../stage/moments';
import { useMoments } from '../stage/use-course';
import styles from './sheet.module.css';

/** Letters from which on a sentence takes more than one line. */
const LONG = 60;

/** What playing waits at since it happened, in a line. */
export function HeldHere() {
  const heldAtS = useDesk((state) => state.heldAtS);
  const covered = useDesk((state) => state.covered.length > 0);
  const moments = useMoments();
  if (heldAtS === undefined) return null;
  const happened = covered ? SOMETHING_HAPPENS : moments[momentIndexAt(moments, heldAtS)]!.name;
  return (
    <p className={styles.held} title={happened} data-long={happened.length > LONG || undefined}>
      {happened} Play goes on.
    </p>
  );
}
