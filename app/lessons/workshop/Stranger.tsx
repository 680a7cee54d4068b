'use client';

import { lazy, Suspense, useState } from 'react';
import { ownSlug } from '@/lib/files/links/own-lesson';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { Button } from '../../parts/Button';
import { StageWaiting } from '../player/stage/StageWaiting';
import { draftTitle } from './draft-title';
import { useCheck } from './faults/use-check';
import styles from './workshop.module.css';

const TryOut = lazy(async () => ({ default: (await import('./looks/looks')).TryOut }));

interface StrangerProps {
  text: string;
  known: KnownNames;
  onKeep: () => void;
  onLeave: () => void;
}

/** A lesson that came in a link. It was made by someone else; nothing of it is kept before one asks for it. */
export function Stranger({ text, known, onKeep, onLeave }: StrangerProps) {
  const { faults } = useCheck(text, known);
  const [trying, setTrying] = useState(false);
  return (
    <section aria-labelledby="stranger" className={styles.workshop}>
      <h2 id="stranger">A lesson came with this link: {draftTitle(text)}</h2>
      {trying ? (
        <Suspense fallback={<StageWaiting />}>
          <TryOut text={text} known={known} keptAs={ownSlug(text)} />
        </Suspense>
      ) : (
        <p>
          Someone made it, and nobody here has looked at what it teaches. Its figures are worked out by this engine; its
          words are the writer’s own. It can show text and run dives, and nothing else. What you answer stays on this
          machine; keep the link to go on another day.
        </p>
      )}
      {!faults && <StageWaiting />}
      {faults && faults.length > 0 && (
        <>
          <p role="alert">It cannot be run as it stands:</p>
          <ul>
            {faults.slice(0, 8).map(({ line, what, mend }, index) => (
              <li key={index}>
                Line {line}. {what} {mend}
              </li>
            ))}
          </ul>
        </>
      )}
      <div className={styles.tools}>
        {faults?.length === 0 && !trying && (
          <Button kind="primary" onClick={() => setTrying(true)}>
            Take the lesson
          </Button>
        )}
        <Button onClick={onKeep}>
          {faults && faults.length > 0 ? 'Keep it and mend it' : 'Keep it among my lessons'}
        </Button>
        <Button onClick={onLeave}>Leave it</Button>
      </div>
    </section>
  );
}
