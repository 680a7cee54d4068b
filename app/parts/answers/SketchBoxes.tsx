'use client';

import { useEffect, useRef, useState } from 'react';
import { answerUnit, readAnswer } from '@/lib/lesson/typed-answer';
import { sayMoment } from '@/lib/lesson/questions/compare-sketch';
import { drawnAt, withoutTyped, withTyped } from '@/lib/lesson/questions/draw-sketch';
import { readMoment, saySketch } from '@/lib/lesson/questions/sketch-in-words';
import type { DrawAsked, Sketch } from '@/lib/lesson/questions/sketch';
import { Button } from '../Button';
import { toFaultOnceMarked } from '../first-fault';
import { Field } from '../Field';
import { usePreferences } from '../preferences';
import { rounded } from './rounded';
import styles from './sketch.module.css';
import { capital } from '@/lib/quantity/capital';

/** The curve is read out when nothing has been typed or drawn for so long, ms. */
const SETTLED_MS = 1200;
/** A curve of so few points was typed: each has a box. */
const MOST_TYPED = 20;

interface SketchBoxesProps {
  asked: DrawAsked;
  sketch: Sketch;
  onSketch: (sketch: Sketch) => void;
  /** Grows when the curve is drawn over: what was typed and not understood is gone with it. */
  strokes: number;
}

/** A box for the value at each moment where a curve may bend, further moments to add, and the curve read back. */
export function SketchBoxes({ asked, sketch, onSketch, strokes }: SketchBoxesProps) {
  const units = usePreferences((state) => state.units);
  const { size, unit } = answerUnit(asked.dimension, units);
  const [more, setMore] = useState(() => (sketch.length <= MOST_TYPED ? sketch.map(({ timeS }) => timeS) : []));
  const boxesS = [...new Set([...asked.boxesS, ...more])].sort((one, other) => one - other);
  const [typed, setTyped] = useState({ strokes, texts: {} as Readonly<Record<number, string>> });
  const texts = typed.strokes === strokes ? typed.texts : {};
  const most = rounded(asked.upTo / size);
  const boxes = useRef<HTMLFieldSetElement>(null);

  const read = (text: string) => {
    const number = readAnswer(text, asked.dimension, units);
    if (!number.ok) return { mend: number.mend };
    const within = number.value >= -1e-9 && number.value <= asked.upTo * (1 + 1e-9);
    return within
      ? { value: number.value }
      : { mend: `The paper goes from 0 to ${most} ${unit}: write ${most} where you think it is more.` };
  };
  const type = (timeS: number, text: string) => {
    setTyped({ strokes, texts: { ...texts, [timeS]: text } });
    const { value } = read(text);
    onSketch(
      value === undefined ? withoutTyped(sketch, timeS) : withTyped(sketch, boxesS, boxesS.indexOf(timeS), value),
    );
  };

  const [added, add] = useState<number>();
  useEffect(() => {
    if (added !== undefined) boxes.current?.querySelector<HTMLElement>(`[data-at="${added}"] input`)?.focus();
  }, [added]);

  return (
    <>
      <fieldset ref={boxes} className={styles.boxes}>
        <legend>{`${capital(asked.noun)}, in ${unit}, from 0 to ${most}`}</legend>
        {boxesS.map((timeS) => {
          const drawn = drawnAt(sketch, timeS);
          const text = texts[timeS];
          return (
            <div key={timeS} data-at={timeS}>
              <Field
                label={`at ${sayMoment(timeS, asked)}`}
                value={text ?? (drawn === undefined ? '' : rounded(drawn / size))}
                inputMode="decimal"
                size={6}
                autoComplete="off"
                error={text === undefined || text.trim() === '' ? undefined : read(text).mend}
                onChange={(event) => type(timeS, event.target.value)}
              />
            </div>
          );
        })}
      </fieldset>
      <AnotherMoment
        asked={asked}
        onMoment={(timeS) => {
          setMore([...more, timeS]);
          add(timeS);
        }}
      />
      <ReadBack words={saySketch(sketch, boxesS, asked, (value) => `${rounded(value / size)} ${unit}`)} />
    </>
  );
}

/** One more moment of the curve, where no box stands yet. */
function AnotherMoment({ asked, onMoment }: { asked: DrawAsked; onMoment: (timeS: number) => void }) {
  const [text, setText] = useState('');
  const [pressed, press] = useState(false);
  const part = useRef<HTMLDivElement>(null);
  const moment = readMoment(text, asked);
  const add = () => {
    press(!moment.ok);
    if (!moment.ok) return;
    setText('');
    onMoment(moment.value);
  };
  return (
    <div ref={part} className={styles.another}>
      <Field
        label="Another moment"
        value={text}
        size={6}
        autoComplete="off"
        error={!moment.ok && (pressed || text.trim() !== '') ? moment.mend : undefined}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          // It adds a moment, and does not send the answer off.
          event.preventDefault();
          add();
        }}
      />
      <Button
        kind="quiet"
        onClick={() => {
          add();
          if (!moment.ok) toFaultOnceMarked(part.current);
        }}
      >
        Add a moment
      </Button>
    </div>
  );
}

/** The curve as it stands, in words, for whoever can't see the paper: said once it has settled, and there to be read. */
function ReadBack({ words }: { words: string }) {
  const [said, say] = useState('');
  useEffect(() => {
    const settled = setTimeout(() => say(words), SETTLED_MS);
    return () => clearTimeout(settled);
  }, [words]);
  return (
    <p className="spoken" role="status">
      {said}
    </p>
  );
}
