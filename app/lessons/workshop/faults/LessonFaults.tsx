'use client';

import type { Path } from '@/lib/lesson/edit-lesson';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import { Button } from '../../../parts/Button';
import { Disclosure } from '../../../parts/Disclosure';
import styles from '../workshop.module.css';

interface LessonFaultsProps {
  faults: readonly LessonFault[] | undefined;
  checking: boolean;
  /** Where the lesson still says what is to be written there. */
  unfinished: readonly Path[];
  onGo: (fault: Pick<LessonFault, 'path'>) => void;
}

/** What is wrong with the lesson as it stands, each with the way to it. */
export function LessonFaults({ faults, checking, unfinished, onGo }: LessonFaultsProps) {
  if (!faults) return <p role="status">Checking the lesson…</p>;
  const count = faults.length;
  return (
    <div className={styles.standing} data-sound={count === 0 && unfinished.length === 0}>
      <p role="status">
        {count === 0
          ? 'The lesson is sound: its dives, values, answers and goals hold.'
          : count === 1
            ? 'One thing to mend.'
            : `${count} things to mend.`}
        {checking && ' Checking what you changed…'}
        {unfinished.length > 0 &&
          ` Not finished: ${unfinished.length === 1 ? 'one part still says' : `${unfinished.length} parts still say`} what is to be written there.`}
      </p>
      {unfinished.length > 0 && (
        <Disclosure summary="Where">
          <ul>
            {unfinished.slice(0, 20).map((path) => (
              <li key={path.join('.')}>
                <Button kind="quiet" onClick={() => onGo({ path })}>
                  {placeWords(path)}
                </Button>
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
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

function placeWords([part, index, ...rest]: Path): string {
  if (part === 'steps') return `Step ${Number(index) + 1}: ${rest.filter((key) => typeof key === 'string').join(', ')}`;
  return part === 'scripts' ? 'Its dives' : `About the lesson: ${part}`;
}
