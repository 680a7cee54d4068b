'use client';

import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react';
import { writeStepsInFeet } from '@/lib/dive/edit/write-in-units';
import { withDraft, withMet, withWayLooked } from '@/lib/lesson/progress';
import { TYPING } from '../../../keep/history';
import { usePreferences } from '../../../parts/preferences';
import { hasRoomToType } from '../../../parts/room-to-type';
import { chosenWatch } from '../../../pictures/scene-watches';
import { Button } from '../../../parts/Button';
import { fetchedLater } from '../../../parts/fetched-later';
import { Disclosure } from '../../../parts/Disclosure';
import { IconButton } from '../../../parts/IconButton';
import { useDesk, useDeskStore } from '../../../stage/desk-context';
import { PlaybackBar } from '../../../stage/PlaybackBar';
import { AskWaysOut } from '../../../working/ways-out/AskWaysOut';
import type { PreparedLesson, TryStep } from '../../prepared';
import { Prose, ProseLine } from '../../../parts/prose/Prose';
import { useSaidOncePaused } from '../../../parts/said-once-paused';
import { goalStanding } from '../engine';
import { useLessonProgress, useProgress } from '../progress-store';
import { Stage } from './Stage';
import folds from '../../../parts/folds.module.css';
import styles from './stage.module.css';
import places from '../window.module.css';

const DeskWaysOut = fetchedLater(async () => (await import('../../../stage/why/DeskWaysOut')).DeskWaysOut);

/** After so many dives that did not do it, what would have is offered as a hint. */
const MISSES_TO_HINT = 2;
/** A dive that stays as it is for so long was meant. */
const MEANT_MS = 1500;

/** The learner's own dive: written or dragged, and judged as it changes. */
export function TryStage({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  const units = usePreferences((state) => state.units);
  const written = (script: string) => (units === 'imperial' && !lesson.inFeet ? writeStepsInFeet(script) : script);
  const [begun] = useState(() => {
    const given = lesson.scripts[step.script]!;
    return { ...given, script: written(given.script) };
  });
  const own = useLessonProgress(lesson.slug);
  const kept = own.tries[step.id]?.met;
  const [draft] = useState(own.drafts[step.id]?.script);
  const update = useProgress((state) => state.update);
  return (
    <Stage
      own
      script={begun}
      draft={draft}
      onScript={(script) => update((before) => withDraft(before, lesson.slug, step.id, { script }))}
      show={step.show}
    >
      <div className={places.note} tabIndex={0}>
        <Goal lesson={lesson} step={step} />
      </div>
      <div className={places.bar}>
        <PlaybackBar />
      </div>
      <div className={`${places.figures} ${folds.folds}`}>
        <OwnScript beginning={begun.script} kept={kept} />
        <Disclosure
          summary="One way to do it"
          onToggle={(open) => open && update((before) => withWayLooked(before, lesson.slug, step.id))}
        >
          <WayToDoIt reach={written(step.reach)} />
        </Disclosure>
      </div>
    </Stage>
  );
}

function Goal({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  const dive = useDeferredValue(useDesk((state) => state.scene.dive));
  const script = useDesk((state) => state.script);
  const sound = useDesk((state) => state.errors.length === 0);
  const units = usePreferences((state) => state.units);
  const update = useProgress((state) => state.update);
  const standing = useMemo(() => goalStanding(lesson, step, dive, units), [lesson, step, dive, units]);
  const met = standing.met && sound;
  useEffect(() => {
    if (met) update((before) => withMet(before, lesson.slug, step.id, script));
  }, [met, script, update, lesson.slug, step.id]);

  const misses = useMisses(script, sound && !met);

  return (
    <section aria-label="Goal" className={styles.goal} data-met={met}>
      <p role="status">
        <b>{met ? 'You have done it.' : missing(standing.clauses.filter((clause) => !clause.met).length)}</b>
      </p>
      <ul className={styles.clauses}>
        {standing.clauses.map((clause, index) => (
          <li key={index}>
            <span aria-hidden="true">{clause.met ? '✓' : '○'}</span>
            <span>
              <span className="spoken">{clause.met ? 'Met: ' : 'Not yet: '}</span>
              {unbroken(clause.text)}
            </span>
          </li>
        ))}
      </ul>
      {met && step.after && <Prose html={step.after} />}
      <div className={folds.folds}>
        {standing.hints.length > 0 && (
          <Disclosure summary="A hint">
            {standing.hints.map((html, index) => (
              <p key={index}>
                <ProseLine html={html} />
              </p>
            ))}
          </Disclosure>
        )}
        {!met && step.more && (
          <Disclosure summary="More">
            <Prose html={step.more} />
          </Disclosure>
        )}
      </div>
      {!met && misses >= MISSES_TO_HINT && <WaysOutHint />}
    </section>
  );
}

/** How many dives the learner has made that did not do it. */
function useMisses(script: string, missed: boolean): number {
  const [misses, setMisses] = useState(0);
  const last = useRef(script);
  useEffect(() => {
    if (!missed || script === last.current) return undefined;
    const meant = setTimeout(() => {
      last.current = script;
      setMisses((before) => before + 1);
    }, MEANT_MS);
    return () => clearTimeout(meant);
  }, [script, missed]);
  return misses;
}

/** Asks what would have avoided the stop or the “slow down” of the dive as it is; nothing where it has neither. */
function WaysOutHint() {
  const watch = useDesk(chosenWatch);
  const has = (kind: string) => watch.events.some((event) => event.kind === kind);
  const target = has('stop-owed') ? 'stop' : has('slow-down') ? 'slow-down' : undefined;
  return (
    <>
      <DeskWaysOut tellOnly />
      {target && (
        <p>
          {target === 'stop' ? 'A stop is owed on this dive. ' : 'The unit says “slow down” on this dive. '}
          <AskWaysOut target={target} />
        </p>
      )}
    </>
  );
}

/** Keeps a number and its unit on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=[a-z%])/g, '$1\u00a0');
}

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six'];

function missing(count: number): string {
  return count === 1 ? 'One thing is still missing.' : `${NUMBERS[count] ?? count} things are still missing.`;
}

function OwnScript({ beginning, kept }: { beginning: string; kept: string | undefined }) {
  const script = useDesk((state) => state.script);
  const errors = useDesk((state) => state.errors);
  const past = useDesk((state) => state.past.length);
  const future = useDesk((state) => state.future.length);
  const { change, undo, redo } = useDeskStore().getState();
  const id = useId();
  const { key, role } = useSaidOncePaused(
    errors.length > 0 ? errors.map(({ line, message }) => `${line} ${message}`).join(' ') : undefined,
  );
  const [roomy] = useState(hasRoomToType);
  return (
    <Disclosure summary="Your dive as a script" open={roomy}>
      <div className={styles.tools}>
        <IconButton icon="undo" label="Undo" onClick={undo} disabled={past === 0} />
        <IconButton icon="redo" label="Redo" onClick={redo} disabled={future === 0} />
        <Button onClick={() => change({ script: beginning })} disabled={script === beginning}>
          Start again
        </Button>
        {kept !== undefined && kept !== script && (
          <Button onClick={() => change({ script: kept })}>Bring back the dive that did it</Button>
        )}
      </div>
      <textarea
        aria-label="Dive script"
        aria-invalid={errors.length > 0 ? true : undefined}
        aria-describedby={`${id}-errors`}
        className={styles.editor}
        spellCheck={false}
        autoCapitalize="off"
        autoCorrect="off"
        value={script}
        rows={script.split('\n').length + 1}
        onChange={(event) => change({ script: event.target.value }, TYPING)}
      />
      <div key={key} id={`${id}-errors`} role={role}>
        <ul className={styles.errors}>
          {errors.slice(0, 4).map(({ line, message, mend }, index) => (
            <li key={index}>
              <b>Line {line}.</b> {message} {mend}
            </li>
          ))}
        </ul>
      </div>
    </Disclosure>
  );
}

function WayToDoIt({ reach }: { reach: string }) {
  const change = useDesk((state) => state.change);
  return (
    <>
      <pre>
        <code>{reach}</code>
      </pre>
      <Button onClick={() => change({ script: reach })}>Put it in place of yours</Button>
    </>
  );
}
