import type { ReactNode } from 'react';
import styles from './pointer-tip.module.css';

interface PointerTipProps {
  /** What is pointed at, in picture units from the picture's outer edge. */
  x: number;
  y: number;
  /** Of the picture, in the same units. The tip opens toward its middle. */
  width: number;
  height: number;
  title: ReactNode;
  children?: ReactNode;
}

/** Narrower pictures have no room beside a pointer: the tip lies across the half the pointer is not in. */
const BESIDE_FROM = 560;

/** Names what a pointer is on, beside it. Its words are in the picture's table too, so screen readers pass over it. */
export function PointerTip({ x, y, width, height, title, children }: PointerTipProps) {
  const above = y > height / 2;
  const place =
    width < BESIDE_FROM
      ? { className: above ? styles.overHead : styles.atFoot }
      : {
          className: `${above ? styles.above : styles.below} ${x > width / 2 ? styles.left : styles.right}`,
          style: { left: share(x, width), top: share(y, height) },
        };
  return (
    <div {...place} aria-hidden="true">
      <b>{title}</b>
      {children}
    </div>
  );
}

/** A length as a share of another: holds however large the picture is drawn. */
export function share(length: number, whole: number): string {
  return `${(100 * length) / whole}%`;
}
