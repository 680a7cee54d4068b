'use client';

import { useRef, useState, type PointerEvent } from 'react';
import { answerUnit, readAnswer } from '@/lib/lesson/typed-answer';
import { sayMoment } from '@/lib/lesson/questions/compare-sketch';
import { drawnAt, withoutTyped, withStroke, withTyped } from '@/lib/lesson/questions/draw-sketch';
import type { DrawAsked, Sketch, SketchPoint } from '@/lib/lesson/questions/sketch';
import { Button } from '../Button';
import { Field } from '../Field';
import { usePreferences } from '../preferences';
import { COLUMNS, PAD, sketchAxes, sketchPath } from './sketch-axes';
import { SketchGround } from './SketchGround';
import { rounded } from './rounded';
import styles from './sketch.module.css';

interface SketchPadProps {
  asked: DrawAsked;
  /** What has been drawn so far. */
  sketch: Sketch;
  onSketch: (sketch: Sketch) => void;
}

/** Paper to draw a curve on, by pointer, or by typing its value where it may bend. */
export function SketchPad({ asked, sketch, onSketch }: SketchPadProps) {
  const units = usePreferences((state) => state.units);
  const axes = sketchAxes(asked, units);
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({});
  const last = useRef<SketchPoint | undefined>(undefined);
  const { size, unit } = answerUnit(asked.dimension, units);
  const { boxesS } = asked;

  const drawTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = PAD.width / box.width;
    const column = Math.round(
      ((axes.timeAt((event.clientX - box.left) * scale) - asked.fromS) / (asked.toS - asked.fromS)) * (COLUMNS - 1),
    );
    const point = { timeS: axes.columnS(column), value: axes.valueAt((event.clientY - box.top) * scale) };
    onSketch(withStroke(sketch, last.current ?? point, point));
    last.current = point;
    setTyped({});
  };

  const type = (box: number, text: string) => {
    setTyped({ ...typed, [box]: text });
    const read = readAnswer(text, asked.dimension, units);
    if (read.ok) onSketch(withTyped(sketch, boxesS, box, Math.min(Math.max(0, read.value), asked.upTo)));
    else if (text.trim() === '') onSketch(withoutTyped(sketch, boxesS[box]!));
  };

  return (
    <div className={styles.pad}>
      <p className={styles.hint}>
        Draw {asked.noun} with the pointer, or type its value at {boxesS.length} moments below.
      </p>
      <svg
        viewBox={`0 0 ${PAD.width} ${PAD.height}`}
        className={styles.paper}
        aria-hidden="true"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          last.current = undefined;
          drawTo(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) drawTo(event);
        }}
        onPointerUp={() => {
          last.current = undefined;
        }}
      >
        <SketchGround axes={axes} />
        <path d={sketchPath(sketch, axes)} className={styles.drawn} />
      </svg>
      <fieldset className={styles.boxes}>
        <legend>{`${asked.noun.charAt(0).toUpperCase()}${asked.noun.slice(1)}, in ${unit}`}</legend>
        {boxesS.map((timeS, box) => {
          const drawn = drawnAt(sketch, timeS);
          const text = typed[box] ?? (drawn === undefined ? '' : rounded(drawn / size));
          const read =
            typed[box] === undefined || typed[box].trim() === ''
              ? undefined
              : readAnswer(typed[box], asked.dimension, units);
          return (
            <Field
              key={timeS}
              label={`at ${sayMoment(timeS, asked)}`}
              value={text}
              inputMode="decimal"
              size={6}
              autoComplete="off"
              error={read && !read.ok ? read.mend : undefined}
              onChange={(event) => type(box, event.target.value)}
            />
          );
        })}
      </fieldset>
      <div>
        <Button
          kind="quiet"
          onClick={() => {
            onSketch([]);
            setTyped({});
          }}
          disabled={sketch.length === 0}
        >
          Rub it out
        </Button>
      </div>
    </div>
  );
}
