'use client';

import { useEffect, useId, useRef, useState } from 'react';
import { Button } from './Button';
import styles from './LinkBox.module.css';

interface LinkBoxProps {
  link: string;
  describedBy?: string | undefined;
  /** What it is, where it is not just a link. */
  label?: string;
}

/** A link to copy. Where the browser does not let a page copy, it is marked for the reader to. */
export function LinkBox({ link, describedBy, label = 'Link' }: LinkBoxProps) {
  const id = useId();
  const box = useRef<HTMLInputElement>(null);
  const [told, tell] = useState('');
  useEffect(() => {
    if (told === '') return undefined;
    const timer = setTimeout(() => tell(''), 6000);
    return () => clearTimeout(timer);
  }, [told]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      tell('Copied.');
    } catch {
      box.current?.select();
      tell(
        window.isSecureContext
          ? 'This browser does not let the page copy. It is marked: copy it yourself.'
          : 'A page that comes over plain HTTP from another machine may not copy. It is marked: copy it yourself.',
      );
    }
  };
  return (
    <div className={styles.box}>
      <label htmlFor={id}>{label}</label>
      <span>
        <input
          ref={box}
          id={id}
          readOnly
          value={link}
          aria-describedby={describedBy}
          onFocus={(event) => event.currentTarget.select()}
        />
        <Button
          kind="primary"
          icon="link"
          {...(label !== 'Link' && { 'aria-label': `Copy: ${label}` })}
          onClick={() => void copy()}
        >
          Copy
        </Button>
      </span>
      <p role="status">{told}</p>
    </div>
  );
}
