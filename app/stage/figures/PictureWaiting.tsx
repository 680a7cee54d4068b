import styles from '../../pictures/frame.module.css';

/** Keeps about the room of a picture that is still being fetched, so that little moves when it comes. */
export function PictureWaiting() {
  return <div className={styles.waiting} aria-busy="true" />;
}
