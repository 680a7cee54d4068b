'use client';

import { useEffect } from 'react';
import { Button } from './Button';
import { IconButton } from './IconButton';
import styles from './StatusRegion.module.css';
import { useStatus } from './status';

/** Long enough to read a sentence and reach its button. */
const shownMs = 10_000;

/**
 * The one place where the app says what it has just done: drawn at the foot of the screen, or in a line that a screen
 * keeps for it, and read out.
 */
export function StatusRegion({ inLine = false }: { inLine?: boolean }) {
  const message = useStatus((status) => status.message);
  const clear = useStatus((status) => status.clear);

  useEffect(() => {
    if (!message) return undefined;
    const timer = setTimeout(clear, shownMs);
    return () => clearTimeout(timer);
  }, [message, clear]);

  return (
    <div className={inLine ? styles.inLine : styles.region}>
      <div role="status" className={message ? styles.toast : undefined}>
        {message && (
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
}
