'use client';

import { useEffect, useState, type ReactNode } from 'react';
import type { Asked } from '@/lib/class/class-state';
import type { LessonAnswer, LessonAnswers } from '@/lib/class/lesson-ask';
import { commonestWrong, type Because } from '@/lib/class/reasons';
import { answersOf, sketchesOf } from '@/lib/class/spread';
import { inUnits } from '@/lib/class/words';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { rounded } from '../../parts/answers/rounded';
import { usePreferences } from '../../parts/preferences';
import { Prose, ProseLine } from '../../parts/prose/Prose';
import { answersOfLesson, useAnswerWords, useAskWords } from '../lesson-words';
import { BecauseLine } from '../shown/BecauseLine';
import styles from './teach.module.css';

/** Why the wrong answers that many gave are wrong. */
export function Reasons({ asked }: { asked: Asked }) {
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
        inUnits(ask.options[option] ?? '', units)
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
  reasons: readonly { readonly count: number; readonly what: ReactNode; readonly because: Because | undefined }[];
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
                <BecauseLine because={because} />
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
      reasons={lacks.map(({ name, because, count }) => ({ count, what: name, because: { html: because } }))}
    />
  );
}
