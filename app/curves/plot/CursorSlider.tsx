'use client';

import { useId } from 'react';
import styles from '../curves.module.css';

interface CursorSliderProps {
  label: string;
  value: number;
  min: number;
  max: number;
  step: number;
  /** The place it stands at, as read: "30 m". */
  shown: string;
  onChange: (value: number) => void;
}

/** The cursor of a plot for the keyboard and for touch: the arrow keys move it, and it says where it stands. */
export function CursorSlider({ label, value, min, max, step, shown, onChange }: CursorSliderProps) {
  const id = useId();
  const place = Math.round((value - min) / step);
  return (
    <div className={`${styles.cursor} unprinted`}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="range"
        min={0}
        max={Math.round((max - min) / step)}
        step={1}
        value={place}
        aria-valuetext={shown}
        onChange={(event) => onChange(min + Number(event.target.value) * step)}
      />
      {/* The slider says it already. */}
      <span aria-hidden="true">{shown}</span>
    </div>
  );
}

/** The nearest place the slider can stand at. */
export function ontoStep(value: number, min: number, max: number, step: number): number {
  return Math.min(max, Math.max(min, min + Math.round((value - min) / step) * step));
}
