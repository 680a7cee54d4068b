import type { ReactNode, SVGAttributes } from 'react';
import styles from '../pictures.module.css';

interface PlateProps extends Pick<
  SVGAttributes<SVGSVGElement>,
  'onPointerDown' | 'onPointerMove' | 'onPointerUp' | 'onPointerLeave' | 'onPointerCancel'
> {
  width: number;
  height: number;
  margin: { readonly left: number; readonly top: number };
  /** Lies over a canvas. */
  className?: string | undefined;
  /** Drawn from the inner edge. */
  children: ReactNode;
}

/** The sheet a picture is drawn on, as large as it is given room for. Its sentence and its table speak for it. */
export function Plate({ width, height, margin, className, children, ...handlers }: PlateProps) {
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      className={className ? `${styles.picture} ${className}` : styles.picture}
      aria-hidden="true"
      {...handlers}
    >
      <rect width={width} height={height} className={styles.hit} />
      <g transform={`translate(${margin.left},${margin.top})`}>{children}</g>
    </svg>
  );
}
