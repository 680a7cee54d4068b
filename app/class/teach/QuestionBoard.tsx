'use client';

import type { Asked } from '@/lib/class/class-state';
import { MOST_ROUNDS } from '@/lib/class/bounds';
import { inUnits } from '@/lib/class/words';
import { answeredCount, answersOf, giveAway, FEWEST_SHOWN, sketchesOf, spreadOf } from '@/lib/class/spread';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { Prose, ProseLine } from '../../parts/prose/Prose';
import { useAskWords } from '../lesson-words';
import { DepthLinePicture } from '../shown/DepthLinePicture';
import { SpreadPicture } from '../../parts/spread/SpreadPicture';
import { Reasons } from './Reasons';
import { does, useClass } from './teacher-line';
import styles from './teach.module.css';

/** The question before the class, on the wall: asked, closed, its spread shown, and the engine's answer run over it. */
export function QuestionBoard({ asked }: { asked: Asked }) {
  const { ask, truth, phase, rounds } = asked;
  const { here } = useClass();
  const words = useAskWords(ask.source);
  const units = usePreferences((state) => state.units);
  const round = rounds.length - 1;
  const count = answeredCount(asked, round);
  const open = phase === 'spread' || phase === 'truth';
  const known = truth.by !== 'choice' || truth.right !== undefined;
  const few = giveAway(asked);
  return (
    <section aria-labelledby="question" className={styles.question}>
      <h2 id="question" tabIndex={-1}>
        {ask.title}
      </h2>
      {ask.text !== undefined && <p className={styles.plain}>{inUnits(ask.text, units)}</p>}
      {words && <Prose html={words.html} />}
      {ask.picture && phase !== 'truth' && <DepthLinePicture {...ask.picture} />}
      {ask.by === 'choice' && !open && (
        <ol className={styles.options}>
          {ask.options.map((option, i) => (
            <li key={i}>
              {words?.optionsHtml?.[i] === undefined ? (
                inUnits(option, units)
              ) : (
                <ProseLine html={words.optionsHtml[i]} />
              )}
            </li>
          ))}
        </ol>
      )}
      <p className={styles.answered} role="status">
        <b>{count}</b> of {Math.max(here.length, count)} have answered
        {round > 0 && ', the second time'}
        {phase !== 'asking' && '; closed'}
      </p>
      {phase === 'closed' && few && (
        <p className={styles.soft}>
          {FEWEST_SHOWN} or more answers hide whose is whose; {count === 1 ? 'this one is' : 'these are'} easily told by
          who looks at the phone. Ask again, or show {count === 1 ? 'it' : 'them'} if nobody minds.
        </p>
      )}
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
          <Button kind={few ? 'plain' : 'primary'} onClick={() => does({ kind: 'spread shown' })}>
            {few ? 'Show the answers all the same' : 'Show how the answers lie'}
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
