'use client';

import { useRef, useState, type PointerEvent } from 'react';
import { entryUnit, readEntry } from '@/lib/lesson/entry';
import type { DrawAsked, Sketch } from '@/lib/lesson/questions/sketch';
import { printClock } from '@/lib/quantity/duration';
import { Button } from '../../parts/Button';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { COLUMNS, PAD, sketchAxes, sketchPath } from './sketch-axes';
import { SketchGround } from './SketchGround';
import { rounded } from './rounded';
import styles from './sketch.module.css';

/** Values by column; a gap where nothing has been drawn yet. */
type Columns = readonly (number | undefined)[];

/** Columns that have a box of their own, for the keyboard. */
const BOXES = [0, 10, 20, 30, 40];
/** A sketch has to reach to within so many columns of either edge. */
const EDGE_COLUMNS = 2;

interface SketchPadProps {
  asked: DrawAsked;
  /** The whole curve, or undefined while part of it is missing. */
  onSketch: (sketch: Sketch | undefined) => void;
}

/** Paper to draw a curve on, by pointer, or by typing its value at five moments. */
export function SketchPad({ asked, onSketch }: SketchPadProps) {
  const units = usePreferences((state) => state.units);
  const axes = sketchAxes(asked, units);
  const [columns, setColumns] = useState<Columns>(() => Array<number | undefined>(COLUMNS).fill(undefined));
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({});
  const last = useRef<{ column: number; value: number } | undefined>(undefined);
  const sketch = sketchOf(columns, axes.columnS);
  const { size, unit } = entryUnit(asked.dimension, units);

  const change = (next: Columns) => {
    setColumns(next);
    onSketch(isWhole(next) ? sketchOf(next, axes.columnS) : undefined);
  };

  const drawTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = PAD.width / box.width;
    const timeS = axes.timeAt((event.clientX - box.left) * scale);
    const value = axes.valueAt((event.clientY - box.top) * scale);
    const column = Math.round(((timeS - asked.fromS) / (asked.toS - asked.fromS)) * (COLUMNS - 1));
    change(stroke(columns, last.current ?? { column, value }, { column, value }));
    last.current = { column, value };
    setTyped({});
  };

  const type = (column: number, text: string) => {
    const next = { ...typed, [column]: text };
    setTyped(next);
    const read = readEntry(text, asked.dimension, units);
    if (!read.ok) return;
    const value = Math.min(Math.max(0, read.value), asked.upTo);
    change(joined(columns, column, value));
  };

  return (
    <div className={styles.pad}>
      <p className={styles.hint}>Draw {asked.noun} with the pointer, or type its value at five moments below.</p>
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
        {BOXES.map((column) => {
          const text = typed[column] ?? (columns[column] === undefined ? '' : rounded(columns[column] / size));
          const read =
            typed[column] === undefined || typed[column].trim() === ''
              ? undefined
              : readEntry(typed[column], asked.dimension, units);
          return (
            <Field
              key={column}
              label={`at ${printClock(axes.columnS(column))}`}
              value={text}
              inputMode="decimal"
              size={6}
              autoComplete="off"
              error={read && !read.ok ? read.mend : undefined}
              onChange={(event) => type(column, event.target.value)}
            />
          );
        })}
      </fieldset>
      <div>
        <Button
          kind="quiet"
          onClick={() => {
            change(columns.map(() => undefined));
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

function sketchOf(columns: Columns, columnS: (column: number) => number): Sketch {
  return columns.flatMap((value, column) => (value === undefined ? [] : [{ timeS: columnS(column), value }]));
}

function isWhole(columns: Columns): boolean {
  const first = columns.findIndex((value) => value !== undefined);
  const last = columns.findLastIndex((value) => value !== undefined);
  return first >= 0 && first <= EDGE_COLUMNS && last >= COLUMNS - 1 - EDGE_COLUMNS;
}

/** A stroke of the hand: every column it passes takes the value it has there. */
function stroke(
  columns: Columns,
  from: { column: number; value: number },
  to: { column: number; value: number },
): Columns {
  const next = [...columns];
  const low = Math.min(from.column, to.column);
  const high = Math.max(from.column, to.column);
  for (let column = low; column <= high; column += 1) {
    const part = to.column === from.column ? 1 : (column - from.column) / (to.column - from.column);
    next[column] = from.value + (to.value - from.value) * part;
  }
  return next;
}

/** A value typed at one moment: joined straight to the boxes beside it that have one. */
function joined(columns: Columns, column: number, value: number): Columns {
  let next = stroke(columns, { column, value }, { column, value });
  for (const neighbour of [column - 10, column + 10]) {
    const there = columns[neighbour];
    if (there !== undefined) next = stroke(next, { column, value }, { column: neighbour, value: there });
  }
  return next;
}
