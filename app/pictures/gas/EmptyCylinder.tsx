import styles from './exposure.module.css';

/** A cylinder with a stroke through it, about its middle. */
export function EmptyCylinder() {
  return (
    <>
      <path d="M-4,9V-4Q-4,-8 0,-8Q4,-8 4,-4V9Z" />
      <rect x="-2" y="-12" width="4" height="4" />
      <path d="M-8,7L8,-8" className={styles.strike} />
    </>
  );
}
