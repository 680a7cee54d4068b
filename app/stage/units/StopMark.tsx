import type { StopKind } from '@/lib/rules/stop-kinds';
import styles from './units.module.css';

/** The mark of each kind of stop, a shape of its own: an open ring is advice, a solid bar the model's limit, a hatched bar a rule's. */
export function StopMark({ kind }: { kind: StopKind }) {
  return (
    <svg viewBox="0 0 20 20" className={styles.mark} aria-hidden="true" focusable="false">
      {kind === 'safety' && <circle cx="10" cy="10" r="6.5" className={styles.ring} />}
      {kind === 'required' && <rect x="2" y="6" width="16" height="8" className={styles.bar} />}
      {kind === 'imposed' && (
        <>
          <rect x="2.75" y="6.75" width="14.5" height="6.5" className={styles.hatchedEdge} />
          <path d="M5 13.2 9 6.8M9 13.2l4-6.4M13 13.2l4-6.4" className={styles.hatch} />
        </>
      )}
    </svg>
  );
}
