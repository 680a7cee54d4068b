'use client';

import { useEffect, useId, useRef, type ReactNode } from 'react';
import styles from './Dialog.module.css';
import { IconButton } from './IconButton';
import { useStatus } from './status';

interface DialogProps {
  open: boolean;
  /** Called on Escape and on the close button; the owner then sets `open` to false. */
  onClose: () => void;
  title: string;
  children: ReactNode;
  /** Buttons along the foot. */
  actions?: ReactNode;
}

/** The browser's own modal dialog: it holds the focus, gives it back on closing, and closes on Escape. */
export function Dialog({ open, onClose, title, children, actions }: DialogProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);

  useEffect(() => {
    const element = dialog.current;
    if (!element || element.open === open) return;
    if (open) element.showModal();
    else element.close();
  }, [open]);

  useEffect(() => {
    if (!open) return undefined;
    useStatus.setState({ holder: dialog.current! });
    return () => useStatus.setState({ holder: undefined });
  }, [open]);

  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby={id} onClose={() => open && onClose()}>
      {open && (
        <>
          <header className={styles.header}>
            <h2 id={id}>{title}</h2>
            <IconButton icon="close" label="Close" onClick={onClose} />
          </header>
          <div className={styles.body}>{children}</div>
          {actions && <footer className={styles.actions}>{actions}</footer>}
        </>
      )}
    </dialog>
  );
}
