'use client';

import { useState } from 'react';
import type { Dimension } from '@/lib/lesson/expression/dimension';
import { answerUnit, readAnswer } from '@/lib/lesson/typed-answer';
import { Field } from '../Field';
import { usePreferences } from '../preferences';

interface NumberAnswerBoxProps {
  dimension: Dimension;
  /** The number in the unit of expressions; undefined while there is none. */
  onNumber: (value: number | undefined, text: string) => void;
  /** What was typed before. */
  begun?: string | undefined;
}

/** A number in the reader's own units. */
export function NumberAnswerBox({ dimension, onNumber, begun = '' }: NumberAnswerBoxProps) {
  const units = usePreferences((state) => state.units);
  const [text, setText] = useState(begun);
  const read = text.trim() === '' ? undefined : readAnswer(text, dimension, units);
  const { unit } = answerUnit(dimension, units);
  return (
    <Field
      label="Your answer"
      value={text}
      inputMode="decimal"
      autoComplete="off"
      size={8}
      unit={unit === '' ? undefined : unit}
      error={read && !read.ok ? `${read.what} ${read.mend}` : undefined}
      onChange={(event) => {
        setText(event.target.value);
        const now = readAnswer(event.target.value, dimension, units);
        onNumber(now.ok ? now.value : undefined, event.target.value);
      }}
    />
  );
}
