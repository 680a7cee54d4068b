import styles from './pictures.module.css';

/** The hatching of what the limits don't allow, as the pattern `id`: the same rock in every picture. */
export function Rock({ id }: { id: string }) {
  return (
    <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect width="7" height="7" className={styles.rockGround} />
      <line x1="0" y1="0" x2="0" y2="7" className={styles.rockLine} />
    </pattern>
  );
}
