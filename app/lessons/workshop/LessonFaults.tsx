'use client';

import type { LessonFault } from '@/lib/lesson/checking/fault';
import { Button } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import styles from './workshop.module.css';

interface LessonFaultsProps {
  faults: readonly LessonFault[] | undefined;
  checking: boolean;
  onGo: (fault: LessonFault) => void;
}

/** What is wrong with the lesson as it stands, each with the way to it. */
export function LessonFaults({ faults, checking, onGo }: LessonFaultsProps) {
  if (!faults) return <p role="status">Checking the lesson…</p>;
  const count = faults.length;
  return (
    <div className={styles.standing} data-sound={count === 0}>
      <p role="status">
        {count === 0
          ? 'The lesson is sound: its dives, values, answers and goals hold.'
          : count === 1
            ? 'One thing to mend.'
            : `${count} things to mend.`}
        {checking && ' Checking what you changed…'}
      </p>
      {count > 0 && (
        <Disclosure summary="What it is" open>
          <ul>
            {faults.slice(0, 20).map((fault, index) => (
              <li key={index}>
                <Button kind="quiet" onClick={() => onGo(fault)}>
                  Line {fault.line}
                </Button>{' '}
                {fault.what} {fault.mend}
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </div>
  );
}
