'use client';

import { useEffect, useRef } from 'react';
import type { ClassAnswer } from '@/lib/class/answer';
import { becauseOf, isRight } from '@/lib/class/reasons';
import { inUnits } from '@/lib/class/words';
import type { QuestionView } from '@/lib/class/view';
import { Prose } from '../../parts/prose/Prose';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { usePreferences } from '../../parts/preferences';
import { BecauseLine } from '../shown/BecauseLine';
import { useAnswerWords, useAskWords } from '../lesson-words';
import { DepthLinePicture } from '../shown/DepthLinePicture';
import { SpreadPicture } from '../../parts/spread/SpreadPicture';
import { AnswerBox } from './AnswerBox';
import { mine, usePhone, type AnswerState } from './phone-line';
import styles from './phone.module.css';

const SAID: Readonly<Record<AnswerState, string>> = {
  none: 'Give your answer. You can change it until the question is closed.',
  sending: 'Your answer is on its way.',
  taken: 'Your answer is in. You can change it until the question is closed.',
  refused: 'Your answer was not taken.',
};

/** Said of one's own answer once the question is closed. */
const CLOSED: Readonly<Record<AnswerState, string>> = {
  none: 'Look at the wall.',
  sending: 'Your answer is on its way.',
  taken: 'Look at the wall.',
  refused: 'Your last answer came too late to count.',
};

/** The question before the class, as a phone has it: to be answered, then to be seen. */
export function PhoneQuestion({ question }: { question: QuestionView }) {
  const { ask, phase, round, spreads, truth } = question;
  const head = useRef<HTMLHeadingElement>(null);
  const state = usePhone((one) => one.answerState);
  const told = usePhone((one) => one.told);
  const given = usePhone((one) => mine(one.view, one.kept));
  const words = useAskWords(ask.source);
  const units = usePreferences((one) => one.units);
  // A new question stands at the top, with what it is answered by.
  useEffect(() => head.current?.scrollIntoView({ block: 'start' }), [ask.id, round]);
  return (
    <UnitsFrame>
      <section aria-labelledby="asked" className={styles.question}>
        <h2 id="asked" ref={head}>
          {ask.title}
        </h2>
        {ask.text !== undefined && <p className={styles.plain}>{inUnits(ask.text, units)}</p>}
        {ask.source && (words ? <Prose html={words.html} /> : <p>The question is being fetched.</p>)}
        {ask.picture && phase !== 'truth' && <DepthLinePicture {...ask.picture} />}
        {phase === 'asking' && (
          <>
            {round > 0 && <p>You have talked it over. What do you say now?</p>}
            <AnswerBox key={`${ask.id} ${round}`} ask={ask} optionsHtml={words?.optionsHtml} given={given} />
            <p role="status" className={styles.state} data-state={state}>
              {told ?? SAID[state]}
            </p>
          </>
        )}
        {phase === 'closed' && (
          <p role="status" className={styles.state}>
            The question is closed. {given ? CLOSED[state] : 'You gave no answer this time.'}
          </p>
        )}
        {spreads.length > 0 && (
          <>
            <h3>What the class said</h3>
            <SpreadPicture ask={ask} spreads={spreads} truth={truth} optionsHtml={words?.optionsHtml} />
          </>
        )}
        {truth && <Verdict question={question} given={given} />}
      </section>
    </UnitsFrame>
  );
}

/** One's own answer beside what the engine says, with the reason that fits it. */
function Verdict({ question: { ask, truth }, given }: { question: QuestionView; given: ClassAnswer | undefined }) {
  const words = useAnswerWords(ask.source);
  const right = given && truth && isRight(given, truth);
  // Of what can be chosen, not all is the model's to say.
  const told =
    truth?.by === 'choice'
      ? { right: 'That is the answer.', wrong: 'The answer is another.' }
      : { right: 'That is what the model says.', wrong: 'The model says something else.' };
  const because = given && truth && right === false ? becauseOf(given, truth, words?.reasons ?? {}) : undefined;
  return (
    <div className={styles.verdict} role="status">
      {right === undefined ? (
        <p>{given ? 'This question has no right answer.' : 'You gave no answer to this one.'}</p>
      ) : (
        <p>
          <b>{right ? `✓ ${told.right}` : `≠ ${told.wrong}`}</b>
        </p>
      )}
      {because && (
        <p>
          <BecauseLine because={because} />
        </p>
      )}
      {words?.after && <Prose html={words.after} />}
    </div>
  );
}
