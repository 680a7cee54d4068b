import type { ComponentProps } from 'react';
import { PAD, type SketchAxes } from './sketch-axes';
import { SketchGround } from './SketchGround';
import room from '../drawn-room.module.css';

/** The paper a curve is drawn on, with its axes, whose letters are as large on a small paper as on a large one. */
export function SketchPaper({ axes, className = '', children, ...svg }: ComponentProps<'svg'> & { axes: SketchAxes }) {
  return (
    <div className={`${room.room} ${className}`}>
      <svg viewBox={`0 0 ${PAD.width} ${PAD.height}`} {...svg}>
        <SketchGround axes={axes} />
        {children}
      </svg>
    </div>
  );
}
