import { useId, type ReactNode } from 'react';

interface ClippedProps {
  width: number;
  height: number;
  /** How far above the inner edge it reaches. */
  above?: number;
  children: ReactNode;
}

/** What is drawn within the inner edge of a picture alone. */
export function Clipped({ width, height, above = 0, children }: ClippedProps) {
  const id = useId();
  return (
    <>
      <clipPath id={id}>
        <rect y={-above} width={width} height={height + above} />
      </clipPath>
      <g clipPath={`url(#${id})`}>{children}</g>
    </>
  );
}
