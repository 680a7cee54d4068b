import styles from './record-picture.module.css';

/** A fault in the record: a cross, and a ring once it is mended. */
export function FaultMark({ x = 0, y = 0, mended }: { x?: number; y?: number; mended: boolean }) {
  return (
    <path
      className={styles.fault}
      d={`M${x.toFixed(1)},${y.toFixed(1)}${mended ? 'm-5,0a5,5 0 1 0 10,0a5,5 0 1 0 -10,0' : 'm-5,-5l10,10m0,-10l-10,10'}`}
    />
  );
}
