import styles from '../stage.module.css';

/** What to do with the dive while none of its points is under the hand. */
export function StepHint() {
  return (
    <p className={styles.stepHint}>
      Drag a point or a leg. Double-click a leg to put a point there. With Tab on a point, arrow and page keys move it,
      Insert adds one at the time cursor, Delete takes it away.
    </p>
  );
}
