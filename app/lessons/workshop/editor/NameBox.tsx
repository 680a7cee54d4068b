'use client';

import { useState } from 'react';
import { Field } from '../../../parts/Field';

interface NameBoxProps {
  name: string;
  taken: readonly string[];
  onName: (name: string) => void;
}

/** A name that takes effect when its box is left, since expressions speak of it. */
export function NameBox({ name, taken, onName }: NameBoxProps) {
  const [typed, setTyped] = useState<string>();
  const wrong =
    typed === undefined || typed === name
      ? undefined
      : !/^[a-z][A-Za-z0-9]{0,19}$/.test(typed)
        ? 'Write letters and digits, beginning with a small letter.'
        : taken.includes(typed)
          ? 'Another has this name.'
          : undefined;
  return (
    <Field
      label="Name"
      value={typed ?? name}
      error={wrong}
      autoComplete="off"
      onChange={(event) => setTyped(event.target.value)}
      onBlur={() => {
        if (typed !== undefined && typed !== name && !wrong) onName(typed);
        if (!wrong) setTyped(undefined);
      }}
    />
  );
}
