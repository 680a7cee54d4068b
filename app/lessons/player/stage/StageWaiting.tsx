import styles from '../steps/step.module.css';

/** In place of pictures while they are on their way. */
export function StageWaiting() {
  return (
    <p className={styles.waiting} role="status">
      Setting up the dive…
    </p>
  );
}
