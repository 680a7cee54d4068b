'use client';

import { useRef, useState, type PointerEvent } from 'react';
import { withStroke } from '@/lib/lesson/questions/draw-sketch';
import type { DrawAsked, Sketch, SketchPoint } from '@/lib/lesson/questions/sketch';
import { Button } from '../Button';
import { Disclosure } from '../Disclosure';
import { usePreferences } from '../preferences';
import { hasRoomToType } from '../room-to-type';
import { COLUMNS, PAD, sketchAxes, sketchPath } from './sketch-axes';
import { SketchBoxes } from './SketchBoxes';
import { SketchPaper } from './SketchPaper';
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
  const [strokes, setStrokes] = useState(0);
  const last = useRef<SketchPoint | undefined>(undefined);

  const drawTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = PAD.width / box.width;
    const column = Math.round(
      ((axes.timeAt((event.clientX - box.left) * scale) - asked.fromS) / (asked.toS - asked.fromS)) * (COLUMNS - 1),
    );
    const point = { timeS: axes.columnS(column), value: axes.valueAt((event.clientY - box.top) * scale) };
    onSketch(withStroke(sketch, last.current ?? point, point));
    last.current = point;
    setStrokes(strokes + 1);
  };

  const [roomy] = useState(hasRoomToType);
  const boxes = <SketchBoxes asked={asked} sketch={sketch} onSketch={onSketch} strokes={strokes} />;
  return (
    <div className={styles.pad}>
      <div className={styles.hint}>
        <p>
          Draw {asked.noun}, or type its value at {asked.boxesS.length} moments.
        </p>
        <Button
          kind="quiet"
          onClick={() => {
            onSketch([]);
            setStrokes(strokes + 1);
          }}
          disabled={sketch.length === 0}
        >
          Rub it out
        </Button>
      </div>
      <SketchPaper
        axes={axes}
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
        <path d={sketchPath(sketch, axes)} className={styles.drawn} />
      </SketchPaper>
      {roomy ? boxes : <Disclosure summary="Type it instead">{boxes}</Disclosure>}
    </div>
  );
}
