'use client';

import { useEffect, useState, type ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { cautions } from '@/content/cautions';
import { Button } from './Button';
import styles from './PrintSheet.module.css';
import { Watermarked } from './Watermarked';

interface PrintSheetProps {
  /** What the button says. */
  label: string;
  title: string;
  /** What is printed: nothing else of the page is. Drawn only while printing. */
  children: () => ReactNode;
  disabled?: boolean;
}

/** A button that prints one sheet, with the cautions at its head and the watermark across it. */
export function PrintSheet({ label, title, children, disabled = false }: PrintSheetProps) {
  const [printing, setPrinting] = useState(false);

  useEffect(() => {
    if (!printing) return undefined;
    const done = () => setPrinting(false);
    window.addEventListener('afterprint', done);
    window.print();
    return () => window.removeEventListener('afterprint', done);
  }, [printing]);

  return (
    <>
      <Button icon="print" disabled={disabled} onClick={() => setPrinting(true)}>
        {label}
      </Button>
      {printing &&
        createPortal(
          <div className={styles.sheet}>
            <div className={styles.caution}>
              <p>{cautions.general}</p>
              <p>{cautions.deepCourse}</p>
            </div>
            <Watermarked>
              <h1>{title}</h1>
              {children()}
            </Watermarked>
            <p>{cautions.unknown}</p>
          </div>,
          document.body,
        )}
    </>
  );
}
