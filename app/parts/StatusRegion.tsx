'use client';

import { useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import { Button } from './Button';
import { IconButton } from './IconButton';
import styles from './StatusRegion.module.css';
import { useStatus } from './status';

/** Long enough to read a sentence. */
const shownMs = 10_000;
/** What moves the focus or speaks does nothing else. */
const MOVING_KEYS = ['Tab', 'Shift', 'Control', 'Alt', 'Meta', 'CapsLock', 'Insert'];

/**
 * The one place where the app says what it has just done: drawn at the foot of the screen, or in a line that a screen
 * keeps for it, and read out; in the dialog that holds the page, while one does.
 */
export function StatusRegion({ inLine = false }: { inLine?: boolean }) {
  const message = useStatus((status) => status.message);
  const holder = useStatus((status) => status.holder);
  const clear = useStatus((status) => status.clear);
  const region = useRef<HTMLDivElement>(null);

  // Words leave after a while. Words with something to do about them wait, from then on, until something else is done;
  // and nothing goes from under a focus.
  useEffect(() => {
    if (!message) return undefined;
    const other = (event: Event) => {
      const { target } = event;
      if (target instanceof Node && region.current?.contains(target)) return;
      if (event instanceof KeyboardEvent && MOVING_KEYS.includes(event.key)) return;
      clear();
    };
    const wait = () => {
      addEventListener('pointerdown', other);
      addEventListener('keydown', other);
    };
    const passed = () => {
      if (message.action || region.current?.contains(document.activeElement)) wait();
      else clear();
    };
    const timer = setTimeout(passed, shownMs);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointerdown', other);
      removeEventListener('keydown', other);
    };
  }, [message, clear]);

  /** Both regions are there before anything is said in them: words put into one are heard, a region with words may not be. */
  const saying = (here: boolean, place: string | undefined) => (
    <div ref={here ? region : undefined} className={place}>
      <div role="status" className={here && message ? styles.toast : undefined}>
        {here && message && (
          <>
            <span key={message.id} title={inLine ? message.text : undefined}>
              {message.text}
            </span>
            {message.action && (
              <Button
                kind="quiet"
                onClick={() => {
                  message.action?.run();
                  clear();
                }}
              >
                {message.action.label}
              </Button>
            )}
            <IconButton icon="close" label="Put this message away" onClick={clear} />
          </>
        )}
      </div>
    </div>
  );
  return (
    <>
      {saying(!holder, inLine ? styles.inLine : styles.region)}
      {holder && createPortal(saying(true, styles.region), holder)}
    </>
  );
}
