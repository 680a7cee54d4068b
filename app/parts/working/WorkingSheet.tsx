'use client';

import { useEffect, useId, useRef, type ReactNode } from 'react';
import { cautions } from '@/content/cautions';
import { oncePainted } from '../after-paint';
import { IconButton } from '../IconButton';
import styles from './working.module.css';

interface WorkingSheetProps {
  title: string;
  /** When and by whom, under the title. */
  where?: string | undefined;
  onClose: () => void;
  children: ReactNode;
}

const NARROW = '(max-width: 48rem)';

/**
 * A sheet beside what is being asked about, which stays in reach: the page makes room for it. On a phone it covers the
 * page and holds the focus. Escape closes it; its opener takes the focus back.
 */
export function WorkingSheet({ title, where, onClose, children }: WorkingSheetProps) {
  const id = useId();
  const sheet = useRef<HTMLDialogElement>(null);
  const body = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = sheet.current;
    if (!element || element.open) return;
    if (window.matchMedia(NARROW).matches) element.showModal();
    // Opened so, it doesn't look for something to have the focus, for which the page would be laid out.
    else element.open = true;
    // The answer is what was asked for; what puts it away can wait.
    oncePainted(() => body.current?.focus({ preventScroll: true }));
  }, []);
  // Said to the page, here and by name for the styles of what makes room. Styles that asked the page whether it holds a
  // sheet would be asked anew at every change made in it. Making room moves the whole page: the sheet is seen before.
  useEffect(() => {
    const { classList, dataset } = document.body;
    oncePainted(() => {
      classList.add(styles.beside!);
      dataset['working'] = 'open';
    });
    return () =>
      oncePainted(() => {
        classList.remove(styles.beside!);
        delete dataset['working'];
      });
  }, []);
  return (
    <dialog
      ref={sheet}
      className={styles.sheet}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        event.stopPropagation();
        onClose();
      }}
    >
      <div className={styles.head}>
        <div>
          <h2 id={id}>{title}</h2>
          {where && <p>{where}</p>}
          {/* Heads every printed page of it. */}
          <p className={styles.printed}>{cautions.general}</p>
        </div>
        <span className={`${styles.tools} unprinted`}>
          <IconButton icon="close" label="Close" onClick={onClose} />
        </span>
      </div>
      <div ref={body} tabIndex={-1} className={styles.body}>
        {children}
      </div>
    </dialog>
  );
}

/** In the place of what takes long to draw, until the sheet itself is seen. */
export function WorkingItOut() {
  return <p role="status">Working it out…</p>;
}
