import type { ReactNode } from 'react';
import styles from './pointer-tip.module.css';

interface PointerTipProps {
  /** What is pointed at, in picture units from the picture's outer edge. */
  x: number;
  y: number;
  /** Of the picture: the tip opens toward its middle. */
  width: number;
  title: ReactNode;
  children?: ReactNode;
}

/** Names what a pointer is on, beside it. Its words are in the picture's table too, so screen readers pass over it. */
export function PointerTip({ x, y, width, title, children }: PointerTipProps) {
  return (
    <div className={styles.tip} data-side={x > width / 2 ? 'left' : 'right'} style={{ left: x, top: y }} aria-hidden="true">
      <b>{title}</b>
      {children}
    </div>
  );
}
