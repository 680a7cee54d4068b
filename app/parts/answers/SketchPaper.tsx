import type { ComponentProps, CSSProperties } from 'react';
import { useWidth } from '../use-width';
import { PAD, type SketchAxes } from './sketch-axes';
import { SketchGround } from './SketchGround';

/** The paper a curve is drawn on, with its axes, whose letters are as large on a small paper as on a large one. */
export function SketchPaper({ axes, children, ...svg }: ComponentProps<'svg'> & { axes: SketchAxes }) {
  const { ref, width } = useWidth<SVGSVGElement>(PAD.width);
  return (
    <svg
      ref={ref}
      viewBox={`0 0 ${PAD.width} ${PAD.height}`}
      style={{ '--units-to-px': PAD.width / width } as CSSProperties}
      {...svg}
    >
      <SketchGround axes={axes} />
      {children}
    </svg>
  );
}
