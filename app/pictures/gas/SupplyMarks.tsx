'use client';

import { saySupplyEvent } from '@/lib/exposure/supply-events';
import type { PictureProps } from '../picture-props';
import type { ProfileScales } from '../profile/profile-scales';
import type { Scene } from '../scene';
import { supplyOf } from '../scene-exposure';
import styles from './exposure.module.css';

interface SupplyMarksProps {
  scene: Scene;
  scales: ProfileScales;
  units: PictureProps['units'];
  onCursor: (timeS: number) => void;
}

/** The moments a cylinder gives no more, or a gas has no cylinder, on the dive. */
export function SupplyMarks({ scene, scales: { x, y }, units, onCursor }: SupplyMarksProps) {
  return (
    <g clipPath="url(#dive-frame)">
      {supplyOf(scene)?.events.map((event, index) => (
        <g
          key={index}
          transform={`translate(${x(event.timeS).toFixed(1)},${(y(event.depthM) + 18).toFixed(1)})`}
          className={styles.supplyMark}
          onClick={() => onCursor(event.timeS)}
        >
          <title>{saySupplyEvent(event, units)}</title>
          <EmptyCylinder />
        </g>
      ))}
    </g>
  );
}

/** A cylinder with a stroke through it, about its middle. */
export function EmptyCylinder() {
  return (
    <>
      <path d="M-4,9V-4Q-4,-8 0,-8Q4,-8 4,-4V9Z" />
      <rect x="-2" y="-12" width="4" height="4" />
      <path d="M-8,7L8,-8" className={styles.strike} />
    </>
  );
}
