'use client';

import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import { Button } from '../../parts/Button';
import { IconButton } from '../../parts/IconButton';
import { TOUR_STOPS } from './tour-stops';
import { useShownPart } from './use-shown-part';
import styles from './tour.module.css';

/** A card in a corner that leads from part to part. The desk stays in use meanwhile. */
export function Tour({ onEnd }: { onEnd: () => void }) {
  const id = useId();
  const [at, setAt] = useState(0);
  const card = useRef<HTMLDivElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const { title, text, part, missing } = TOUR_STOPS[at]!;
  const { ring, corner } = useShownPart(part, card);
  useEffect(() => heading.current?.focus({ preventScroll: true }), [at]);

  const last = at === TOUR_STOPS.length - 1;
  const go = (by: -1 | 1) => setAt((now) => Math.min(Math.max(0, now + by), TOUR_STOPS.length - 1));
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onEnd();
    else if (event.key === 'ArrowRight') go(1);
    else if (event.key === 'ArrowLeft') go(-1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <>
      {ring && (
        <div
          className={`${styles.ring} unprinted`}
          data-ring=""
          aria-hidden="true"
          style={{
            insetBlockStart: ring.top,
            insetInlineStart: ring.left,
            inlineSize: ring.right - ring.left,
            blockSize: ring.bottom - ring.top,
          }}
        />
      )}
      <div
        ref={card}
        role="dialog"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-text`}
        className={`${styles.card} unprinted`}
        data-corner={corner}
        onKeyDown={press}
      >
        <header>
          <h2 ref={heading} id={`${id}-title`} tabIndex={-1} aria-describedby={`${id}-text`}>
            {title}
          </h2>
          <IconButton icon="close" label="End the tour" onClick={onEnd} />
        </header>
        <p id={`${id}-text`}>
          {text} {!ring && <b>{missing}</b>}
        </p>
        <footer>
          <span>
            Stop {at + 1} of {TOUR_STOPS.length}
          </span>
          {/* Kept in reach at the first stop, so that the focus is not lost on the way there. */}
          <Button aria-disabled={at === 0} onClick={() => go(-1)}>
            Back
          </Button>
          <Button kind="primary" onClick={last ? onEnd : () => go(1)}>
            {last ? 'Done' : 'Next'}
          </Button>
        </footer>
      </div>
    </>
  );
}
