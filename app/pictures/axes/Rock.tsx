import { memo } from 'react';
import styles from '../pictures.module.css';

/**
 * The hatching of what the limits don't allow, as the pattern `id`: the same rock in every picture. Slanting lines on a
 * straight tile: a browser lays it as it is, where a turned one would be worked out anew at every pixel.
 */
export const Rock = memo(function Rock({ id }: { id: string }) {
  return (
    <pattern id={id} width="10" height="10" patternUnits="userSpaceOnUse">
      <rect width="10" height="10" className={styles.rockGround} />
      <path d="M-1,1l2,-2M0,10l10,-10M9,11l2,-2" className={styles.rockLine} />
    </pattern>
  );
});
