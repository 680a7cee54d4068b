'use client';

import { useState } from 'react';
import { DIVE_ASKS, type DiveAsk } from '@/lib/class/dive-asks';
import { printDayClock } from '@/lib/dive/day-clock';
import { Button } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { diveTitle } from '../../pictures/dive-title';
import { useDeskStore } from '../../stage/desk-context';
import { cursorSample } from '../../stage/desk-store';
import { READING_IDS } from '../../stage/reading-ids';
import { lineUntil } from '../shown/line-until';
import { newAskId } from './new-id';
import { does } from './teacher-line';
import styles from './teach.module.css';

/** What is asked most; the rest is folded away. */
const ASKED_MOST = DIVE_ASKS.slice(0, 6);
const ASKED_MORE = DIVE_ASKS.slice(6);

/** The readings of the moment the hand stands on, each a question. */
export function DiveQuestions() {
  const store = useDeskStore();
  const [told, tell] = useState<string>();
  const ask = async (one: DiveAsk) => {
    const { scene, script, covered, rules, change, pause } = store.getState();
    pause();
    const { askMoment } = await import('@/lib/class/ask-moment');
    const atS = scene.timeline.timeS[cursorSample(store.getState())]!;
    const title = diveTitle(script, scene, usePreferences.getState().units);
    const moment = { title, script, atS, ...(rules && { rules: { ...rules } }) };
    const made = askMoment(one, moment);
    if (!made.ok) return tell(made.why);
    tell(undefined);
    // What is asked for is covered, on the wall and on phones that follow.
    const reading = READING_IDS.find((id) => id === one.reading);
    if (reading && !covered.includes(reading)) change({ covered: [...covered, reading] });
    return does({
      kind: 'asked',
      ask: {
        id: newAskId(),
        title: `At ${printDayClock(scene.timeline, atS)}`,
        text: one.words,
        picture: one.unseen ? undefined : lineUntil(scene, atS),
        ...made.asked,
      },
      truth: made.truth,
      origin: { by: 'dive', ask: one.id, ...moment },
    });
  };
  return (
    <section aria-labelledby="dive-asks">
      <h3 id="dive-asks">Ask about this moment</h3>
      <AskList asks={ASKED_MOST} onAsk={(one) => void ask(one)} />
      <Disclosure summary="Other readings">
        <AskList asks={ASKED_MORE} onAsk={(one) => void ask(one)} />
      </Disclosure>
      <p role="status">{told}</p>
    </section>
  );
}

function AskList({ asks, onAsk }: { asks: readonly DiveAsk[]; onAsk: (one: DiveAsk) => void }) {
  return (
    <ul className={styles.asks}>
      {asks.map((one) => (
        <li key={one.id}>
          <span>{one.words}</span>
          <Button aria-label={`Ask: ${one.words}`} onClick={() => onAsk(one)}>
            Ask
          </Button>
        </li>
      ))}
    </ul>
  );
}
