'use client';

import { useEffect, useState, type ReactNode } from 'react';
import type { Asked } from '@/lib/class/class-state';
import type { LessonAnswer, LessonAnswers } from '@/lib/class/lesson-ask';
import { MOST_ROUNDS } from '@/lib/class/bounds';
import { commonestWrong } from '@/lib/class/reasons';
import { answeredCount, answersOf, sketchesOf, spreadOf } from '@/lib/class/spread';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { rounded } from '../../parts/answers/rounded';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { Prose, ProseLine } from '../../parts/prose/Prose';
import { answersOfLesson, useAnswerWords, useAskWords } from '../lesson-words';
import { DepthLinePicture } from '../shown/DepthLinePicture';
import { SpreadPicture } from '../shown/SpreadPicture';
import { does, useClass } from './teacher-line';
import styles from './teach.module.css';

/** The question before the class, on the wall: asked, closed, its spread shown, and the engine's answer run over it. */
export function QuestionBoard({ asked }: { asked: Asked }) {
  const { ask, truth, phase, rounds } = asked;
  const { here } = useClass();
  const words = useAskWords(ask.source);
  const round = rounds.length - 1;
  const count = answeredCount(asked, round);
  const open = phase === 'spread' || phase === 'truth';
  const known = truth.by !== 'choice' || truth.right !== undefined;
  return (
    <section aria-labelledby="question" className={styles.question}>
      <h2 id="question">{ask.title}</h2>
      {ask.text !== undefined && <p className={styles.plain}>{ask.text}</p>}
      {words && <Prose html={words.html} />}
      {ask.picture && phase !== 'truth' && <DepthLinePicture {...ask.picture} />}
      {ask.by === 'choice' && !open && (
        <ol className={styles.options}>
          {ask.options.map((option, i) => (
            <li key={i}>
              {words?.optionsHtml?.[i] === undefined ? option : <ProseLine html={words.optionsHtml[i]} />}
            </li>
          ))}
        </ol>
      )}
      <p className={styles.answered} role="status">
        <b>{count}</b> of {Math.max(here.length, count)} have answered
        {round > 0 && ', the second time'}
        {phase !== 'asking' && '; closed'}
      </p>
      {open && (
        <SpreadPicture
          ask={ask}
          spreads={rounds.map((_, i) => spreadOf(ask, answersOf(asked, i)))}
          truth={phase === 'truth' ? truth : undefined}
          optionsHtml={words?.optionsHtml}
          sketches={ask.by === 'draw' ? rounds.map((_, i) => sketchesOf(answersOf(asked, i))) : undefined}
        />
      )}
      {phase === 'truth' && <Reasons asked={asked} />}
      <div className={styles.doings} role="group" aria-label="This question">
        {phase === 'asking' && (
          <Button kind="primary" onClick={() => does({ kind: 'closed' })}>
            Close it
          </Button>
        )}
        {phase === 'closed' && (
          <Button kind="primary" onClick={() => does({ kind: 'spread shown' })}>
            Show how the answers lie
          </Button>
        )}
        {phase === 'spread' && known && (
          <Button kind="primary" icon="play" onClick={() => does({ kind: 'truth shown' })}>
            Run the model over it
          </Button>
        )}
        {phase !== 'asking' && rounds.length < MOST_ROUNDS && (
          <Button onClick={() => does({ kind: 'asked again' })}>Discuss and ask again</Button>
        )}
        <Button
          kind={phase === 'truth' || (phase === 'spread' && !known) ? 'primary' : 'plain'}
          onClick={() => does({ kind: 'put away' })}
        >
          Next question
        </Button>
      </div>
    </section>
  );
}

/** Why the wrong answers that many gave are wrong. */
function Reasons({ asked }: { asked: Asked }) {
  const { ask, truth, rounds } = asked;
  const words = useAskWords(ask.source);
  const answer = useAnswerWords(ask.source);
  const units = usePreferences((state) => state.units);
  const round = rounds.length - 1;
  if (ask.by === 'draw') return <CurveReasons asked={asked} answer={answer} />;
  const wrong = commonestWrong(ask, truth, answersOf(asked, round), answer?.reasons ?? {});
  const named = (option: number) =>
    ask.by === 'choice' ? (
      words?.optionsHtml?.[option] === undefined ? (
        ask.options[option]
      ) : (
        <ProseLine html={words.optionsHtml[option]} />
      )
    ) : (
      `Compartment ${option}`
    );
  const value = (one: number) => {
    if (ask.by !== 'number') return '';
    const { unit, size } = answerUnit(ask.dimension, units);
    return `${rounded(one / size)} ${unit}`;
  };
  return (
    <ReasonList
      heading="What else was said, and why it is not so"
      after={answer?.after}
      reasons={wrong.map(({ count, option, between, because }) => ({
        count,
        because,
        what:
          option !== undefined
            ? named(option)
            : between &&
              (between[0] === between[1] ? value(between[0]) : `${value(between[0])} to ${value(between[1])}`),
      }))}
    />
  );
}

interface ReasonListProps {
  heading: string;
  reasons: readonly { readonly count: number; readonly what: ReactNode; readonly because: string | undefined }[];
  /** What is said to all after the answer. */
  after: string | undefined;
}

function ReasonList({ heading, reasons, after }: ReasonListProps) {
  return (
    <div className={styles.reasons}>
      {reasons.length > 0 && <h3>{heading}</h3>}
      <ul>
        {reasons.map(({ count, what, because }, i) => (
          <li key={i}>
            <p>
              <b>{count} ×</b> {what}
            </p>
            {because !== undefined && (
              <p>
                <ProseLine html={because} />
              </p>
            )}
          </li>
        ))}
      </ul>
      {after !== undefined && <Prose html={after} />}
    </div>
  );
}

interface Lack {
  readonly name: string;
  readonly because: string;
  readonly count: number;
}

/** What many of the curves lack; judged by the engine, which is fetched for it. */
function CurveReasons({ asked, answer }: { asked: Asked; answer: LessonAnswer | undefined }) {
  const [lacks, setLacks] = useState<readonly Lack[]>([]);
  const lesson = asked.ask.source?.lesson;
  const round = asked.rounds.length - 1;
  useEffect(() => {
    if (!answer || lesson === undefined) return undefined;
    let gone = false;
    const sketches = sketchesOf(answersOf(asked, round));
    void Promise.all([import('@/lib/class/curve-reasons'), answersOfLesson(lesson)]).then(
      ([{ commonLacks }, { scripts }]: [typeof import('@/lib/class/curve-reasons'), LessonAnswers]) => {
        if (!gone) setLacks(commonLacks(answer.reasons, { scripts }, answer.script, sketches));
      },
    );
    return () => {
      gone = true;
    };
  }, [asked, answer, lesson, round]);
  return (
    <ReasonList
      heading="What many curves lack"
      after={answer?.after}
      reasons={lacks.map(({ name, because, count }) => ({ count, what: name, because }))}
    />
  );
}
