import { routes } from './routes';
import styles from './Wordmark.module.css';

/** A compartment filling, with a dot where it is half full. */
export function Wordmark() {
  return (
    <a href={routes.home.path} className={styles.wordmark}>
      <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
        <path className={styles.axes} d="M4.5 3v24.5H29" />
        <path className={styles.curve} d="M4.5 27.5C8 12 14 7 29 6" />
        <circle className={styles.half} cx="8.8" cy="16" r="3.2" />
      </svg>
      {routes.home.name}
    </a>
  );
}
