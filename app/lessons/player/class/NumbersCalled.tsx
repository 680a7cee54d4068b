'use client';

import { useState } from 'react';
import { readNumber } from '@/lib/quantity/number';
import { Button } from '../../../parts/Button';
import { Field } from '../../../parts/Field';
import { rounded } from '../../../parts/answers/rounded';
import styles from './class-lesson.module.css';

interface NumbersCalledProps {
  unit: string;
  called: readonly number[];
  onCalled: (called: readonly number[]) => void;
}

/** Numbers as a class calls them out. */
export function NumbersCalled({ unit, called, onCalled }: NumbersCalledProps) {
  const [text, setText] = useState('');
  const read = text.trim() === '' ? undefined : readNumber(text, unit);
  const counts = new Map<number, number>();
  for (const value of called) counts.set(value, (counts.get(value) ?? 0) + 1);
  return (
    <form
      className={styles.called}
      onSubmit={(event) => {
        event.preventDefault();
        if (!read?.ok) return;
        onCalled([...called, read.value.value]);
        setText('');
      }}
    >
      <Field
        label="A number from the class"
        value={text}
        unit={unit}
        inputMode="decimal"
        size={6}
        autoComplete="off"
        error={read && !read.ok ? `${read.what} ${read.mend}` : undefined}
        onChange={(event) => setText(event.target.value)}
      />
      <Button type="submit">Add</Button>
      <ul aria-label="Numbers called">
        {[...counts]
          .sort(([one], [other]) => one - other)
          .map(([value, hands]) => (
            <li key={value}>
              {rounded(value)} {unit}
              {hands > 1 && ` × ${hands}`}
            </li>
          ))}
      </ul>
      {called.length > 0 && (
        <Button kind="quiet" onClick={() => onCalled(called.slice(0, -1))}>
          Take the last one back
        </Button>
      )}
    </form>
  );
}
