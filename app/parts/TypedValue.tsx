'use client';

import { useState } from 'react';
import type { Parsed } from '@/lib/quantity/parsed';
import { Field } from './Field';

interface TypedValueProps<Value> {
  label: string;
  /** The value now, as it reads. */
  shown: string;
  parse: (text: string) => Parsed<Value>;
  onValue: (value: Value) => void;
  /** Takes effect while it is typed, whenever it makes sense; otherwise on Enter or on leaving the box. */
  live?: boolean;
  hint?: string | undefined;
}

/** A box for a quantity as people type it. It says what is wrong with what was typed, and keeps it until it is mended or left by Escape. */
export function TypedValue<Value>({ label, shown, parse, onValue, live = false, hint }: TypedValueProps<Value>) {
  const [typed, setTyped] = useState<string>();
  const read = typed === undefined ? undefined : parse(typed);
  const commit = () => {
    if (!live && typed !== undefined && typed !== shown && read?.ok) onValue(read.value);
    if (read?.ok !== false) setTyped(undefined);
  };
  return (
    <Field
      label={label}
      value={typed ?? shown}
      hint={hint}
      autoComplete="off"
      error={read && !read.ok ? `${read.what} ${read.mend}` : undefined}
      onChange={(event) => {
        const text = event.target.value;
        setTyped(text);
        const now = live ? parse(text) : undefined;
        if (now?.ok) onValue(now.value);
      }}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape') setTyped(undefined);
      }}
    />
  );
}
