'use client';

import { useState } from 'react';
import { Field } from '../../parts/Field';
import styles from './glossary.module.css';

/** Leaves only the terms on the page that have what is looked for, in their words or in their meaning. */
export function TermFinder({ count }: { count: number }) {
  const [found, setFound] = useState(count);
  return (
    <div className={`${styles.finder} unprinted`} role="search">
      <Field label="Find a term" type="search" onChange={(event) => setFound(leaveOnly(event.target.value))} />
      <p role="status">{found === 0 ? 'No term has that in it.' : found === 1 ? 'One term.' : `${found} terms.`}</p>
    </div>
  );
}

/** Hides every term that lacks one of the words, and every letter that is left with none; how many are left. */
function leaveOnly(sought: string): number {
  // Keyboards write the straight apostrophe, the glossary the curved one.
  const words = sought.toLowerCase().replaceAll("'", '’').split(/\s+/).filter(Boolean);
  let left = 0;
  for (const entry of document.querySelectorAll<HTMLElement>('[data-term]')) {
    const text = (entry.textContent ?? '').toLowerCase();
    entry.hidden = !words.every((word) => text.includes(word));
    if (!entry.hidden) left += 1;
  }
  for (const letter of document.querySelectorAll<HTMLElement>('[data-letter]'))
    letter.hidden = letter.querySelector('[data-term]:not([hidden])') === null;
  return left;
}
