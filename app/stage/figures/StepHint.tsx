import styles from '../stage.module.css';

/** What to do with the dive while none of its points is under the hand. */
export function StepHint() {
  return (
    <p className={styles.stepHint}>
      Drag a point or a leg, or choose one with Tab and move it with the arrow keys. Double-click the line to add a
      point.
    </p>
  );
}
