'use client';

import { useEffect, useRef, useState } from 'react';
import { MOST_OPTIONS } from '@/lib/class/bounds';
import type { LessonAnswers, LessonAsk, LessonAsks } from '@/lib/class/lesson-ask';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { Field } from '../../parts/Field';
import { ownLessonInClass } from '../../keep/own-lesson-in-class';
import { toFirstFault } from '../../parts/first-fault';
import { OWN_IN_CLASS, shelfPath, teachPath } from '../../parts/lesson-paths';
import { Segmented } from '../../parts/Segmented';
import { usePressedFirst } from '../../parts/use-pressed-first';
import { answersOfLesson, asksOf } from '../lesson-words';
import { newAskId } from './new-id';
import { does } from './teacher-line';
import styles from './teach.module.css';

type From = 'lesson' | 'own';

interface Shelved {
  readonly slug: string;
  readonly title: string;
}

/** What to ask next, kept as it is while a question is before the class. A covered reading is asked below, beside the dive. */
export function AskPanel({ hidden }: { hidden: boolean }) {
  const [from, setFrom] = useState<From>('lesson');
  return (
    <section aria-labelledby="ask" className={styles.panel} hidden={hidden}>
      <h2 id="ask" tabIndex={-1}>
        Ask the class
      </h2>
      <Segmented
        label="A question from"
        labelSpokenOnly
        value={from}
        onChange={setFrom}
        segments={[
          { value: 'lesson', label: 'From a lesson' },
          { value: 'own', label: 'Your own' },
        ]}
      />
      {from === 'lesson' ? <FromLesson /> : <OwnQuestion />}
      <p className={styles.soft}>A covered reading of a dive is asked beside the dive, below.</p>
    </section>
  );
}

function lessonInAddress(): string {
  return /^#lesson=([a-z0-9-]+)$/.exec(location.hash)?.[1] ?? '';
}

function FromLesson() {
  const [own] = useState(ownLessonInClass);
  const [shelf, setShelf] = useState<readonly Shelved[]>([]);
  const [slug, setSlug] = useState('');
  const [lesson, setLesson] = useState<{ slug: string; asks: LessonAsks; answers: LessonAnswers }>();
  const [failed, fail] = useState(false);
  useEffect(() => {
    let gone = false;
    fetch(shelfPath)
      .then((answer) => answer.json() as Promise<Shelved[]>)
      .then((all) => {
        if (gone) return;
        setShelf(all);
        const asked = lessonInAddress();
        const known = (own !== undefined && asked === OWN_IN_CLASS) || all.some((one) => one.slug === asked);
        setSlug(known ? asked : (all[0]?.slug ?? ''));
      })
      .catch(() => !gone && fail(true));
    return () => {
      gone = true;
    };
  }, [own]);
  useEffect(() => {
    if (slug === '' || slug === OWN_IN_CLASS) return undefined;
    let gone = false;
    Promise.all([asksOf(slug), answersOfLesson(slug)])
      .then(([asks, answers]) => !gone && setLesson({ slug, asks, answers }))
      .catch(() => !gone && fail(true));
    return () => {
      gone = true;
    };
  }, [slug]);
  if (failed) return <p role="alert">The lessons could not be fetched. Reload the page; the class is kept.</p>;
  const shown = lesson?.slug === slug ? lesson : undefined;
  // It is there again after the question, and after a reload.
  const choose = (chosen: string) => {
    setSlug(chosen);
    history.replaceState(history.state, '', teachPath(chosen));
  };
  const ask = (one: LessonAsk) => {
    const answer = shown!.answers.answers.find(({ id }) => id === one.id)!;
    does({
      kind: 'asked',
      ask: { ...one.asked, id: newAskId(), source: { lesson: slug, question: one.id } },
      truth: answer.truth,
    });
  };
  return (
    <>
      <Choice
        label="Lesson"
        value={slug}
        onChange={choose}
        options={[
          ...(own ? [{ value: OWN_IN_CLASS, label: `Yours: ${own.title}` }] : []),
          ...shelf.map((one) => ({ value: one.slug, label: one.title })),
        ]}
      />
      {own && slug === OWN_IN_CLASS && (
        <ul className={styles.asks}>
          {own.questions.map(({ question, ask: its, truth }) => (
            <Askable
              key={question}
              {...its}
              onAsk={() =>
                does({ kind: 'asked', ask: { ...its, id: newAskId() }, truth, origin: { by: 'own lesson', question } })
              }
            />
          ))}
        </ul>
      )}
      <ul className={styles.asks}>
        {shown?.asks.asks.map((one) => (
          <Askable key={one.id} {...one.asked} onAsk={() => ask(one)} />
        ))}
      </ul>
    </>
  );
}

function Askable({ title, by, onAsk }: { title: string; by: keyof typeof KINDS; onAsk: () => void }) {
  const press = usePressedFirst(onAsk);
  return (
    <li>
      <span>
        {title} <span className={styles.soft}>({KINDS[by]})</span>
      </span>
      <Button aria-label={`Ask: ${title}`} {...press}>
        Ask
      </Button>
    </li>
  );
}

const KINDS = { choice: 'a choice', number: 'a number', draw: 'a curve', leader: 'who leads' } as const;

/** A question of the teacher's own, with answers to choose from; which is right may be left open. */
function OwnQuestion() {
  const [text, setText] = useState('');
  const [options, setOptions] = useState<readonly string[]>(['', '']);
  const [right, setRight] = useState('');
  const [presses, setPresses] = useState(0);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => void (form.current && toFirstFault(form.current)), [presses]);
  const given = options.map((option) => option.trim());
  const kept = given.filter((option) => option !== '');
  const missing = text.trim() === '' ? 'question' : kept.length < 2 ? 'answers' : undefined;
  const told = presses > 0 ? missing : undefined;
  const ask = () => {
    if (missing) return setPresses((before) => before + 1);
    const index = right === '' ? -1 : kept.indexOf(given[Number(right)]!);
    setPresses(0);
    setText('');
    setOptions(['', '']);
    setRight('');
    return does({
      kind: 'asked',
      ask: { id: newAskId(), title: 'A question', text: text.trim(), by: 'choice', options: kept },
      truth: { by: 'choice', ...(index >= 0 && { right: index }) },
    });
  };
  return (
    <form
      ref={form}
      className={styles.own}
      onSubmit={(event) => {
        event.preventDefault();
        ask();
      }}
    >
      <Field
        label="Your question"
        value={text}
        maxLength={600}
        error={told === 'question' ? 'Write the question first.' : undefined}
        onChange={(event) => setText(event.target.value)}
      />
      {options.map((option, i) => (
        <Field
          key={i}
          label={`Answer ${String.fromCharCode(65 + i)}`}
          value={option}
          maxLength={200}
          error={
            told === 'answers' && i === given.indexOf('') ? 'Write at least two answers to choose from.' : undefined
          }
          onChange={(event) => setOptions(options.map((one, j) => (j === i ? event.target.value : one)))}
        />
      ))}
      <div className={styles.row}>
        <Button disabled={options.length >= MOST_OPTIONS} onClick={() => setOptions([...options, ''])}>
          One answer more
        </Button>
        <Choice
          label="The right one"
          value={right}
          onChange={setRight}
          options={[
            { value: '', label: 'none is marked' },
            ...options.map((_, i) => ({ value: String(i), label: String.fromCharCode(65 + i) })),
          ]}
        />
        <Button type="submit" kind="primary">
          Ask it
        </Button>
      </div>
    </form>
  );
}
