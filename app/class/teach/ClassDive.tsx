'use client';

import { useEffect, useState } from 'react';
import { currentOf } from '@/lib/class/class-state';
import type { PictureId } from '../../pictures/picture-ids';
import { scriptOnDesk } from '../../keep/dive-on-desk';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { usePreferences } from '../../parts/preferences';
import { scenarios } from '@/content/scenarios/scenarios';
import { diveTitle } from '../../pictures/dive-title';
import { DeskContext, useDesk, useDeskStore } from '../../stage/desk-context';
import { createDeskStore, cursorSample, type DeskStore } from '../../stage/desk-store';
import { Playback, PlaybackBar } from '../../stage/PlaybackBar';
import type { ReadingId } from '../../stage/reading-ids';
import { ReadingsPanel } from '../../stage/ReadingsPanel';
import { DiveShown } from '../shown/DiveShown';
import { useAnswerWords } from '../lesson-words';
import { DIVE_ASKS, diveAsk } from './dive-asks';
import { newAskId } from './new-id';
import { does, point, useClass } from './teacher-line';
import styles from './teach.module.css';

const SHOWN: readonly PictureId[] = ['profile', 'chase'];
const READ: readonly ReadingId[] = [
  'depth',
  'time',
  'no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
  'surfacing-supersaturation',
];
/** What is a question to begin with: all but where the diver is. */
const SECRET = READ.filter((id) => id !== 'depth' && id !== 'time');
/** How much of the dive before the moment asked about is played, s of the dive, and how fast. */
const RUN_UP_S = 180;
const RUN_SPEED = '30';

/** A dive before the class: read, asked about, followed on phones. Hidden while a question is open, whose answer it shows. */
export function ClassDive({ hidden }: { hidden: boolean }) {
  const [store, setStore] = useState<DeskStore>();
  useEffect(() => {
    let gone = false;
    void scriptOnDesk()
      .catch(() => undefined)
      .then((script) => {
        if (!gone) setStore(() => diveStore(script));
      });
    return () => {
      gone = true;
    };
  }, []);
  if (!store) return null;
  return (
    <DeskContext value={store}>
      <Playback />
      <TruthRun />
      <FollowedHand />
      <section aria-labelledby="dive" className={styles.dive} hidden={hidden}>
        <DiveHead />
        <DiveShown pictures={SHOWN} />
        <PlaybackBar />
        <div className={styles.readings}>
          <ReadingsPanel only={READ} />
        </div>
        <DiveQuestions />
      </section>
    </DeskContext>
  );
}

/** The dive on the desk, its readings covered; a ready one where there is none, or it makes no sense. */
function diveStore(script: string | undefined): DeskStore {
  const made = createDeskStore(
    { script: scenarios[0].script, pictures: SHOWN, covered: SECRET },
    true,
    scenarios[0].stillS,
  );
  if (script !== undefined) {
    made.getState().change({ script });
    if (made.getState().errors.length > 0) made.getState().change({ script: scenarios[0].script });
  }
  return made;
}

function DiveHead() {
  const script = useDesk((state) => state.script);
  const scene = useDesk((state) => state.scene);
  const units = usePreferences((state) => state.units);
  const store = useDeskStore();
  const { follow } = useClass();
  const ready = scenarios.find((one) => one.script === script);
  const title = ready?.title ?? diveTitle(script, scene, units);
  const begin = () => does({ kind: 'following', follow: { title, script, covered: [...store.getState().covered] } });
  return (
    <div className={styles.diveHead}>
      <h2 id="dive">The dive</h2>
      <Choice
        label="Dive"
        value={ready?.id ?? ''}
        onChange={(id) => {
          const chosen = scenarios.find((one) => one.id === id);
          if (!chosen) return;
          store.getState().change({ script: chosen.script, covered: SECRET });
          store.getState().setCursor(chosen.stillS);
        }}
        options={[
          ...(ready ? [] : [{ value: '', label: 'the dive on your desk' }]),
          ...scenarios.map((one) => ({ value: one.id, label: one.title })),
        ]}
      />
      <div className={styles.row} role="group" aria-label="Phones and this dive">
        {!follow && <Button onClick={begin}>Let phones follow it</Button>}
        {follow?.mode === 'follow' && (
          <Button onClick={() => does({ kind: 'let free' })}>Let them try it themselves</Button>
        )}
        {follow?.mode === 'free' && (
          <Button kind="primary" onClick={() => does({ kind: 'called back' })}>
            Call them back
          </Button>
        )}
        {follow && <Button onClick={() => does({ kind: 'no longer following' })}>No longer follow</Button>}
      </div>
    </div>
  );
}

function DiveQuestions() {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const covered = useDesk((state) => state.covered);
  const change = useDesk((state) => state.change);
  const pause = useDesk((state) => state.pause);
  const [told, tell] = useState<string>();
  return (
    <section aria-labelledby="dive-asks">
      <h3 id="dive-asks">Ask about this moment</h3>
      <ul className={styles.asks}>
        {DIVE_ASKS.map((one) => (
          <li key={one.id}>
            <span>{one.words}</span>
            <Button
              aria-label={`Ask: ${one.words}`}
              onClick={() => {
                const made = diveAsk(one, scene, sample, newAskId());
                if (!made.ok) return tell(made.why);
                tell(undefined);
                pause();
                // What is asked for is covered, on the wall and on phones that follow.
                if (one.reading && !covered.includes(one.reading as ReadingId))
                  change({ covered: [...covered, one.reading as ReadingId] });
                return does({ kind: 'asked', ask: made.ask, truth: made.truth });
              }}
            >
              Ask
            </Button>
          </li>
        ))}
      </ul>
      <p role="status">{told}</p>
    </section>
  );
}

/** Once the model is run over a question, the dive it is about plays up to its moment, uncovered. */
function TruthRun() {
  const store = useDeskStore();
  const current = currentOf(useClass());
  const isTrue = current?.phase === 'truth';
  const id = current?.ask.id;
  const isOfDive = current?.ask.source === undefined && current?.ask.picture !== undefined;
  const endS = current?.ask.picture?.points.at(-1)?.[0];
  const lessonScript = useAnswerWords(isTrue ? current?.ask.source : undefined)?.script;
  useEffect(() => {
    if (!isTrue || !isOfDive || endS === undefined) return undefined;
    const { change, setCursor, setSpeed, play, pause } = store.getState();
    change({ covered: [] });
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      setCursor(endS);
      return undefined;
    }
    setCursor(Math.max(0, endS - RUN_UP_S));
    setSpeed(RUN_SPEED);
    play();
    const stop = store.subscribe((now) => {
      if (now.cursorS < endS) return;
      stop();
      if (!now.playing) return;
      now.pause();
      now.setCursor(endS);
    });
    return () => {
      stop();
      pause();
    };
  }, [store, id, isTrue, isOfDive, endS]);
  // A question of a lesson brings its own dive.
  useEffect(() => {
    if (lessonScript !== undefined && store.getState().script !== lessonScript)
      store.getState().change({ script: lessonScript, covered: [] });
  }, [store, lessonScript]);
  return null;
}

/** Tells phones that follow where the hand stands, and what is covered. */
function FollowedHand() {
  const store = useDeskStore();
  const { follow } = useClass();
  const script = useDesk((state) => state.script);
  const scene = useDesk((state) => state.scene);
  const units = usePreferences((state) => state.units);
  const sound = useDesk((state) => state.errors.length === 0);
  const covered = useDesk((state) => state.covered);
  const isFollowed = follow !== undefined;
  useEffect(() => {
    if (!isFollowed) return undefined;
    point(store.getState().cursorS);
    return store.subscribe((now, before) => {
      if (now.cursorS !== before.cursorS) point(now.cursorS);
    });
  }, [store, isFollowed]);
  const behind = follow && sound && (follow.script !== script || follow.covered.join() !== covered.join());
  useEffect(() => {
    if (!behind) return;
    const title = scenarios.find((one) => one.script === script)?.title ?? diveTitle(script, scene, units);
    does({ kind: 'following', follow: { title, script, covered: [...covered] } });
  }, [behind, script, scene, units, covered]);
  return null;
}
