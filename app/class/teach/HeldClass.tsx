'use client';

import { useEffect, useRef, useState } from 'react';
import { currentOf } from '@/lib/class/class-state';
import { spacedCode } from '@/lib/class/code';
import { Button } from '../../parts/Button';
import { oncePainted } from '../../parts/after-paint';
import { fetchedLater } from '../../parts/fetched-later';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { AskPanel } from './AskPanel';
import { ClassResults } from './ClassResults';
import { JoinBoard } from './JoinBoard';
import { NoServer } from './TeachClass';
import { QuestionBoard } from './QuestionBoard';
import { endClass, holdHere, openClass, start, stop, useClass, useTeacher } from './teacher-line';
import styles from './teach.module.css';

const ClassDive = fetchedLater(async () => (await import('./ClassDive')).ClassDive);

/** The class this page holds, or the button that opens one. */
export function HeldClass() {
  const standing = useTeacher((one) => one.standing);
  useEffect(() => {
    void start();
    return stop;
  }, []);
  // The button that opened a class is gone with it: whoever works by keys is then at the code, the first thing to tell.
  const pressed = useRef(false);
  const before = useRef(standing);
  useEffect(() => {
    if (before.current === 'none' && standing === 'opening') pressed.current = true;
    else if (standing === 'open' && pressed.current) {
      pressed.current = false;
      document.querySelector<HTMLElement>('#class-code')?.focus();
    }
    before.current = standing;
  }, [standing]);
  switch (standing) {
    case 'looking':
      return <p className={styles.waiting}>Looking for a class…</p>;
    case 'no server':
      return <NoServer />;
    case 'none':
      return <Opening />;
    case 'opening':
      return (
        <p role="status" className={styles.waiting}>
          Opening the class…
        </p>
      );
    case 'elsewhere':
      return (
        <section className={styles.notice} aria-label="Held elsewhere">
          <p role="alert">Another window of yours holds this class now.</p>
          <Button kind="primary" onClick={holdHere}>
            Hold it here
          </Button>
        </section>
      );
    case 'open':
    case 'lost':
      return <OpenClass />;
  }
}

function Opening() {
  const told = useTeacher((one) => one.told);
  const state = useClass();
  return (
    <>
      <section aria-label="Open a class" className={styles.notice}>
        <p>
          Phones join by a code, over the network this machine is in: no account, no name, nothing on any server’s disk.
          The server is opened to the network for as long as the class lasts.
        </p>
        {told !== undefined && <p role="alert">{told}</p>}
        <Button kind="primary" icon="screen" onClick={() => void openClass()}>
          Open a class
        </Button>
      </section>
      {state.asked.length > 0 && <ClassResults />}
    </>
  );
}

/** A button that was pressed may go with what it did: whoever works by keys is then at the heading of what came. */
function useFocusKept(now: string | undefined): void {
  const before = useRef(now);
  useEffect(() => {
    if (before.current === now) return;
    before.current = now;
    // The page is laid out for it: that is done once what came is seen.
    oncePainted(() => {
      const { activeElement } = document;
      if (activeElement === document.body || activeElement?.closest('[hidden]'))
        document.querySelector<HTMLElement>('#question, #ask')?.focus();
    });
  }, [now]);
}

function OpenClass() {
  const state = useClass();
  const standing = useTeacher((one) => one.standing);
  const code = useTeacher((one) => one.held!.code);
  const [opened, setOpened] = useState<boolean>();
  const [ending, setEnding] = useState(false);
  const current = currentOf(state);
  useFocusKept(current && `${current.ask.id} ${current.phase} ${current.rounds.length}`);
  // It makes room for the first question by itself.
  const joining = opened ?? state.asked.length === 0;
  return (
    <UnitsFrame>
      <div className={styles.class}>
        <div className={styles.bar} role="group" aria-label="This class">
          <p id="class-code" tabIndex={-1} className={styles.code}>
            <span>Code</span> <b>{spacedCode(code)}</b>
          </p>
          <p role="status" className={styles.count}>
            <b>{state.here.length}</b> {state.here.length === 1 ? 'phone' : 'phones'} here
          </p>
          <Button aria-expanded={joining} onClick={() => setOpened(!joining)}>
            How to join
          </Button>
          {ending ? (
            <>
              <Button kind="primary" onClick={() => void endClass()}>
                End it for everyone
              </Button>
              <Button kind="quiet" onClick={() => setEnding(false)}>
                Go on
              </Button>
            </>
          ) : (
            <Button onClick={() => setEnding(true)}>End the class</Button>
          )}
        </div>
        {standing === 'lost' && (
          <p role="alert" className={styles.lost}>
            The line to the server is cut. The class is held here and comes back by itself; look whether{' '}
            <code>npm start</code> still runs.
          </p>
        )}
        {joining && <JoinBoard code={code} />}
        {current && <QuestionBoard asked={current} />}
        <AskPanel hidden={current !== undefined} />
        <ClassDive hidden={current !== undefined && current.phase !== 'truth'} />
        <ClassResults />
      </div>
    </UnitsFrame>
  );
}
