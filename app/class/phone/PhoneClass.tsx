'use client';

import { useEffect, useRef, useState } from 'react';
import { readCode, spacedCode } from '@/lib/class/code';
import { Button } from '../../parts/Button';
import { fetchedLater } from '../../parts/fetched-later';
import { Field } from '../../parts/Field';
import { toFirstFault } from '../../parts/first-fault';
import { Page } from '../../parts/Page';
import { routes } from '../../parts/routes';
import { useOpened } from '../../parts/use-opened';
import { codeInAddress, join, leave, resume, usePhone } from './phone-line';
import styles from './phone.module.css';

const PhoneQuestion = fetchedLater(async () => (await import('./once-joined')).PhoneQuestion);
const PhoneFollow = fetchedLater(async () => (await import('./once-joined')).PhoneFollow);

/** A phone in a class: it joins by the code, answers what is asked and follows the dive on the wall. */
export function PhoneClass() {
  const standing = usePhone((state) => state.standing);
  const code = usePhone((state) => state.kept?.code);
  const question = usePhone((state) => state.view?.question);
  const follow = usePhone((state) => state.view?.follow);
  const opened = useOpened();
  useEffect(resume, []);
  if (standing === 'out' || standing === 'over' || code === undefined)
    return <Joining key={String(opened)} over={standing === 'over'} begun={opened ? (codeInAddress() ?? '') : ''} />;
  return (
    <Page title="Your class">
      <div className={styles.phone}>
        <p className={styles.standing} role="status" data-standing={standing}>
          {standing === 'in' && `You are in the class ${spacedCode(code)}.`}
          {standing === 'waiting' && 'The line to the class is cut. It comes back by itself, and your answer is kept.'}
          {standing === 'missing' &&
            `There is no class ${spacedCode(code)} now: your teacher’s page is away and comes back by itself, or the class is over. If it is over, leave it.`}
        </p>
        {question && <PhoneQuestion question={question} />}
        {!question && follow && <PhoneFollow follow={follow} />}
        {!question && !follow && standing === 'in' && <p>Wait for the first question: it appears here by itself.</p>}
        <p className={styles.foot}>
          Nobody but your teacher sees your nickname. The class sees answers without names; your teacher’s browser tells
          them apart by phone.{' '}
          <Button kind="quiet" onClick={() => leave()}>
            Leave the class
          </Button>
        </p>
      </div>
    </Page>
  );
}

function Joining({ over, begun }: { over: boolean; begun: string }) {
  const [typed, setTyped] = useState(begun);
  const [name, setName] = useState('');
  const [told, tell] = useState<string>();
  const [joining, setJoining] = useState(false);
  const [presses, setPresses] = useState(0);
  const form = useRef<HTMLFormElement>(null);
  // Once it stands there what is wrong, the hand is where it is mended.
  useEffect(() => void (form.current && toFirstFault(form.current)), [presses]);
  const code = readCode(typed);
  const goIn = async () => {
    if (code === undefined) tell('A code has six letters and digits, such as K7M 2QX; it has no 0, O, 1, I or L.');
    else {
      setJoining(true);
      tell(await join(code, name.trim()));
      setJoining(false);
    }
    setPresses((before) => before + 1);
  };
  return (
    <Page title={routes.class.name} lead="Your teacher shows a code. No account, and no name is needed.">
      <form
        ref={form}
        className={styles.joining}
        onSubmit={(event) => {
          event.preventDefault();
          void goIn();
        }}
      >
        {over && <p role="status">The class is over. Your phone has forgotten what you answered.</p>}
        <Field
          label="The code on the wall"
          value={typed}
          size={9}
          maxLength={12}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          error={told}
          onChange={(event) => {
            setTyped(event.target.value);
            tell(undefined);
          }}
        />
        <Field
          label="A nickname, if you like"
          hint="Only your teacher sees it."
          value={name}
          maxLength={24}
          autoComplete="off"
          onChange={(event) => setName(event.target.value)}
        />
        <Button type="submit" kind="primary" disabled={joining}>
          Join the class
        </Button>
      </form>
    </Page>
  );
}
