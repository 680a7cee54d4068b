'use client';

import { useEffect, useState } from 'react';
import { currentOf } from '@/lib/class/class-state';
import { DIVE_ASKS } from '@/lib/class/dive-asks';
import type { PictureId } from '../../pictures/picture-ids';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { diveOnDesk, type DeskDive } from '../../keep/dive-on-desk';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { usePreferences } from '../../parts/preferences';
import { scenarios } from '@/content/scenarios/scenarios';
import { diveTitle } from '../../pictures/dive-title';
import { DeskContext, useDesk, useDeskStore } from '../../stage/desk-context';
import { createDeskStore, type DeskStore } from '../../stage/desk-store';
import { Playback, PlaybackBar } from '../../stage/PlaybackBar';
import { READING_IDS, type ReadingId } from '../../stage/reading-ids';
import { ReadingsPanel } from '../../stage/ReadingsPanel';
import { DiveShown } from '../shown/DiveShown';
import { useAnswerWords } from '../lesson-words';
import { DiveQuestions } from './DiveQuestions';
import { point } from './point';
import { does, useClass, useTeacher } from './teacher-line';
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
const SECRET: readonly ReadingId[] = READ.filter((id) => id !== 'depth' && id !== 'time');
/** How much of the dive before the moment asked about is played, s of the dive, and how fast. */
const RUN_UP_S = 180;
const RUN_SPEED = '30';

/** A dive before the class: read, asked about, followed on phones. Hidden while a question is open, whose answer it shows. */
export function ClassDive({ hidden }: { hidden: boolean }) {
  const [store, setStore] = useState<DeskStore>();
  const [desk, setDesk] = useState<DeskDive>();
  // The dive that came with a question of a lesson.
  const [lessonScript, setLessonScript] = useState<string>();
  useEffect(() => {
    let gone = false;
    void diveOnDesk()
      .catch(() => undefined)
      .then((found) => {
        if (gone) return;
        const made = createDeskStore(
          { script: scenarios[0].script, pictures: SHOWN, covered: SECRET },
          true,
          scenarios[0].stillS,
        );
        if (found && takesFromDesk(made, found)) setDesk(found);
        setStore(() => made);
      });
    return () => {
      gone = true;
    };
  }, []);
  if (!store) return null;
  return (
    <DeskContext value={store}>
      <Playback />
      <TruthRun onLessonDive={setLessonScript} />
      <FollowedHand />
      <section aria-labelledby="dive" className={styles.dive} hidden={hidden}>
        <DiveHead desk={desk} lessonScript={lessonScript} />
        <DiveShown pictures={SHOWN} />
        <PlaybackBar />
        <DiveReadings />
        <DiveQuestions />
      </section>
    </DeskContext>
  );
}

/** What is read of the dive: the usual, what is covered on the desk besides, and what has been asked about. */
function DiveReadings() {
  const covered = useDesk((state) => state.covered);
  const { asked } = useClass();
  const more = [...covered, ...asked.flatMap(({ origin }) => (origin?.by === 'dive' ? readingOf(origin.ask) : []))];
  return (
    <div className={styles.readings}>
      <ReadingsPanel only={READING_IDS.filter((id) => READ.includes(id) || more.includes(id))} />
    </div>
  );
}

function readingOf(ask: string): ReadingId[] {
  const reading = DIVE_ASKS.find(({ id }) => id === ask)?.reading;
  return READING_IDS.filter((id) => id === reading);
}

/** Takes the dive on the desk as it stood there, its readings covered; false where it makes no sense, and another stays. */
function takesFromDesk(made: DeskStore, desk: DeskDive): boolean {
  const { script: before, change, setCursor } = made.getState();
  const rules = ruleSettingsSchema.safeParse(desk.rules);
  const covered = READING_IDS.filter((id) => SECRET.includes(id) || desk.covered.includes(id));
  change({ script: desk.script, covered, ...(rules.success && { rules: rules.data }) });
  const sound = made.getState().errors.length === 0;
  if (sound) setCursor(desk.cursorS);
  else change({ script: before });
  return sound;
}

interface DiveHeadProps {
  desk: DeskDive | undefined;
  lessonScript: string | undefined;
}

function DiveHead({ desk, lessonScript }: DiveHeadProps) {
  const script = useDesk((state) => state.script);
  const scene = useDesk((state) => state.scene);
  const units = usePreferences((state) => state.units);
  const store = useDeskStore();
  const { follow } = useClass();
  const ready = scenarios.find((one) => one.script === script);
  const shown = ready?.id ?? (script === desk?.script ? 'desk' : script === lessonScript ? 'lesson' : 'asked');
  const title = ready?.title ?? diveTitle(script, scene, units);
  const begin = () => does({ kind: 'following', follow: { title, script, covered: [...store.getState().covered] } });
  return (
    <div className={styles.diveHead}>
      <h2 id="dive">The dive</h2>
      <Choice
        label="Dive"
        value={shown}
        onChange={(id) => {
          if (id === 'desk' && desk) takesFromDesk(store, desk);
          if (id === 'lesson' && lessonScript !== undefined)
            store.getState().change({ script: lessonScript, covered: SECRET });
          const chosen = scenarios.find((one) => one.id === id);
          if (!chosen) return;
          store.getState().change({ script: chosen.script, covered: SECRET });
          store.getState().setCursor(chosen.stillS);
        }}
        options={[
          ...(desk ? [{ value: 'desk', label: 'the dive on your desk' }] : []),
          ...(shown === 'asked' ? [{ value: 'asked', label: 'the dive that was asked about' }] : []),
          ...(lessonScript !== undefined ? [{ value: 'lesson', label: 'the dive of the lesson' }] : []),
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

/** Once the model is run over a question, the dive it is about plays up to its moment, uncovered. */
function TruthRun({ onLessonDive }: { onLessonDive: (script: string) => void }) {
  const store = useDeskStore();
  const current = currentOf(useClass());
  const isTrue = current?.phase === 'truth';
  const id = current?.ask.id;
  const origin = isTrue && current.origin?.by === 'dive' ? current.origin : undefined;
  const endS = origin?.atS;
  const asked = origin?.script;
  const lessonScript = useAnswerWords(isTrue ? current?.ask.source : undefined)?.script;
  useEffect(() => {
    if (endS === undefined || asked === undefined) return undefined;
    const { script, change, setCursor, setSpeed, play, pause } = store.getState();
    // After a reload another dive may stand there.
    change({ covered: [], ...(script !== asked && { script: asked }) });
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
  }, [store, id, asked, endS]);
  // A question of a lesson brings its own dive.
  useEffect(() => {
    if (lessonScript === undefined) return;
    onLessonDive(lessonScript);
    if (store.getState().script !== lessonScript) store.getState().change({ script: lessonScript, covered: [] });
  }, [store, lessonScript, onLessonDive]);
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
  // A server that was started anew does not know where it stands.
  const isFollowed = useTeacher(({ standing }) => standing === 'open') && follow !== undefined;
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
