'use client';

import { Suspense, useEffect, useId, useRef, type ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { Icon } from '../Icon';
import { useOpenWhy } from './open-why';
import styles from './WhyButton.module.css';

interface WhyButtonProps {
  /** What is asked about, to follow "Why": "this no-stop time". */
  about: string;
  /** The answer, drawn once it is asked for: a WorkingPanel, loaded lazily. */
  children: (close: () => void) => ReactNode;
  /** Give one where the question is also asked from elsewhere, with `useOpenWhy`. */
  id?: string;
  /** Fits among the words of a table. */
  small?: boolean;
}

/** A small button that answers "why?" in place. The answer goes away with the button, and leaves the focus on it. */
export function WhyButton({ about, children, id: given, small = false }: WhyButtonProps) {
  const own = useId();
  const id = given ?? own;
  const open = useOpenWhy((state) => state.id === id);
  const { ask, close } = useOpenWhy.getState();
  const button = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);

  useEffect(() => {
    // Nobody asked for something else meanwhile: the focus comes back.
    if (wasOpen.current && !open && useOpenWhy.getState().id === undefined) button.current?.focus();
    wasOpen.current = open;
  }, [open]);
  useEffect(
    () => () => {
      if (useOpenWhy.getState().id === id) useOpenWhy.getState().close();
    },
    [id],
  );

  const label = `Why ${about}?`;
  return (
    <>
      <button
        ref={button}
        type="button"
        className={`${styles.why} ${small ? styles.small : ''} unprinted`}
        aria-label={label}
        title={label}
        aria-expanded={open}
        onClick={() => (open ? close() : ask(id))}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || !open) return;
          event.stopPropagation();
          close();
        }}
      >
        <Icon name="why" />
      </button>
      {open &&
        createPortal(
          <Suspense
            fallback={
              <p role="status" className={styles.loading}>
                Working it out…
              </p>
            }
          >
            {children(close)}
          </Suspense>,
          document.body,
        )}
    </>
  );
}
