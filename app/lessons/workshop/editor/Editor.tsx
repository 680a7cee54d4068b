'use client';

import { lazy, Suspense, useMemo, useRef, useState } from 'react';
import { lessonFile } from '@/lib/files/links/lesson-file';
import { lessonData, withEntry, withEntryMoved, withKey, withValue } from '@/lib/lesson/edit-lesson';
import { unfinishedIn } from '@/lib/lesson/unfinished';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { TYPING } from '../../../keep/history';
import { useUndo } from '../../../keep/use-undo';
import { useUndoKeys } from '../../../keep/use-undo-keys';
import { Button } from '../../../parts/Button';
import { Choice } from '../../../parts/Choice';
import { toFirstFault } from '../../../parts/first-fault';
import { IconButton } from '../../../parts/IconButton';
import { Segmented } from '../../../parts/Segmented';
import { useStatus } from '../../../parts/status';
import { fileWords, saveFile } from '../../../parts/save-file';
import { StageWaiting } from '../../player/stage/StageWaiting';
import { draftTitle } from '../draft-title';
import { FactsTable } from './FactsTable';
import { DIVE_FIELDS, lessonFields, stepFields } from './field-specs';
import { Fields } from './Fields';
import type { Editing } from '../faults/Faults';
import { PassOnLesson } from '../PassOnLesson';
import { StepList, type Place } from './StepList';
import { LessonFaults } from '../faults/LessonFaults';
import { useCheck } from '../faults/use-check';
import { stepKind } from './step-kind';
import styles from '../workshop.module.css';
import { fieldOf } from '@/lib/lesson/read-progress';

const TryOut = lazy(async () => ({ default: (await import('../looks/looks')).TryOut }));
const OwnPaper = lazy(async () => ({ default: (await import('../looks/looks')).OwnPaper }));
const LookBeside = lazy(async () => ({ default: (await import('../looks/looks')).LookBeside }));

interface EditorProps {
  text: string;
  known: KnownNames;
  onText: (text: string) => void;
  onClose: () => void;
}

const VIEWS = [
  { value: 'write', label: 'Write' },
  { value: 'text', label: 'As text' },
  { value: 'try', label: 'Try it as a student' },
  { value: 'paper', label: 'On paper' },
] as const;

const LOOKS = [
  { value: 'none', label: 'nothing' },
  { value: 'phone', label: 'the lesson on a phone, 390 px' },
  { value: 'projector', label: 'the lesson before a class, 1024 px' },
] as const;
type View = (typeof VIEWS)[number]['value'];

/** One lesson in the making: its parts as forms, the whole as text, and as a student meets it. */
export function Editor({ text, known, onText, onClose }: EditorProps) {
  const [view, setView] = useState<View>('write');
  const [place, setPlace] = useState<Place>('lesson');
  const [look, setLook] = useState<(typeof LOOKS)[number]['value']>('none');
  const [passing, setPassing] = useState(false);
  const history = useUndo(text, onText);
  useUndoKeys(history.undo, history.redo);
  const { faults, checking } = useCheck(text, known);
  const data = useMemo(() => lessonData(text), [text]);
  const unfinished = useMemo(() => unfinishedIn(data), [data]);
  const { change } = history;
  const editing = useMemo(
    (): Editing => ({
      faults: faults ?? [],
      set: (path, value) => change(withValue(text, path, value), `set ${path.join('.')}`),
      add: (path, value) => change(withEntry(text, path, value)),
      move: (path, from, to) => change(withEntryMoved(text, path, from, to)),
      rename: (path, before, after) => change(withKey(text, path, before, after)),
      exchange: (path, before, after, value) =>
        change(
          withValue(
            before === undefined ? text : withValue(text, [...path, before], undefined),
            [...path, after],
            value,
          ),
        ),
    }),
    [text, faults, change],
  );
  const title = draftTitle(text);
  const say = useStatus((state) => state.say);
  const form = useRef<HTMLDivElement>(null);
  const goTo = ({ path }: Pick<LessonFault, 'path'>) => {
    setView(data === undefined || path.length === 0 ? 'text' : 'write');
    setPlace(path[0] === 'steps' && typeof path[1] === 'number' ? path[1] : path[0] === 'scripts' ? 'dives' : 'lesson');
    // The work goes on in the box itself, or in the text, once it is drawn.
    requestAnimationFrame(() => {
      const within = form.current;
      const box = within?.querySelector<HTMLElement>(`[data-path="${CSS.escape(path.join('.'))}"]`);
      if (box) box.focus();
      else if (!within || !toFirstFault(within)) within?.querySelector('textarea')?.focus();
    });
  };
  const teach = async () => {
    const [first] = faults ?? [];
    if (first) {
      goTo(first);
      say(`Mend this first. Line ${first.line}: ${first.what} ${first.mend}`);
      return;
    }
    const { toClass } = await import('../take-to-class');
    if (!toClass(text, known))
      say('This lesson asks nothing yet. Add a step that lets the class predict, then take it to class.');
  };

  return (
    <section aria-label={title} className={styles.editor}>
      <div className={styles.head}>
        <h2>{title}</h2>
        <span className={styles.tools}>
          <IconButton icon="undo" label="Undo" onClick={history.undo} disabled={!history.canUndo} />
          <IconButton icon="redo" label="Redo" onClick={history.redo} disabled={!history.canRedo} />
          <Button
            icon="save"
            onClick={() => saveFile(`${fileWords(title)}.yaml`, lessonFile(text), 'application/yaml')}
          >
            Export
          </Button>
          <Button icon="link" onClick={() => setPassing(true)}>
            Pass on
          </Button>
          <Button disabled={faults === undefined || checking} onClick={() => void teach()}>
            Teach it to a class with phones
          </Button>
          <Button onClick={onClose}>All your lessons</Button>
        </span>
      </div>
      <div className={styles.tools}>
        <Segmented label="View" labelSpokenOnly segments={VIEWS} value={view} onChange={setView} />
        {view === 'write' && <Choice label="Beside the form" value={look} onChange={setLook} options={LOOKS} />}
      </div>
      <LessonFaults faults={faults} checking={checking} unfinished={unfinished} onGo={goTo} />
      {view === 'write' && data === undefined && (
        <p>The text is not YAML as it stands. Mend it as text; the forms come back by themselves.</p>
      )}
      {view === 'write' && data !== undefined && (
        <div className={styles.write} data-look={look}>
          <StepList
            text={text}
            data={data}
            place={place}
            faults={faults ?? []}
            onPlace={setPlace}
            onText={(next) => change(next)}
          />
          <div ref={form} className={styles.form}>
            <PlaceForm place={place} data={data} known={known} editing={editing} />
            <FactsTable />
          </div>
          {look !== 'none' && (
            <Suspense fallback={<StageWaiting />}>
              <LookBeside text={text} known={known} step={stepId(data, place)} on={look} />
            </Suspense>
          )}
        </div>
      )}
      {view === 'text' && (
        <div ref={form} className={styles.field}>
          <label htmlFor="lesson-text">The lesson as YAML, as it is exported</label>
          <textarea
            id="lesson-text"
            className={styles.whole}
            spellCheck={false}
            value={text}
            rows={32}
            onChange={(event) => change(event.target.value, TYPING)}
          />
        </div>
      )}
      {(view === 'try' || view === 'paper') &&
        (faults?.length === 0 && !checking ? (
          <Suspense fallback={<StageWaiting />}>
            {view === 'try' ? <TryOut text={text} known={known} /> : <OwnPaper text={text} known={known} />}
          </Suspense>
        ) : (
          <p>
            The lesson can be {view === 'try' ? 'tried' : 'printed'} once it is checked and there is nothing to mend.
          </p>
        ))}
      {passing && <PassOnLesson text={text} onClose={() => setPassing(false)} />}
    </section>
  );
}

function stepId(data: unknown, place: Place): string | undefined {
  const id = typeof place === 'number' ? fieldOf(fieldOf(fieldOf(data, 'steps'), place), 'id') : undefined;
  return typeof id === 'string' ? id : undefined;
}

function PlaceForm({
  place,
  data,
  known,
  editing,
}: {
  place: Place;
  data: unknown;
  known: KnownNames;
  editing: Editing;
}) {
  if (place === 'lesson') return <Fields fields={lessonFields(known)} data={data} path={[]} editing={editing} />;
  if (place === 'dives') return <Fields fields={[DIVE_FIELDS]} data={data} path={[]} editing={editing} />;
  const step = fieldOf(fieldOf(data, 'steps'), place);
  const kind = stepKind(step);
  if (!kind)
    return (
      <p>
        {step === undefined
          ? 'There is no such step any more.'
          : 'The kind of this step is not known. Mend it as text.'}
      </p>
    );
  const scripts = (fieldOf(data, 'scripts') ?? {}) as object;
  return (
    <Fields
      key={place}
      fields={stepFields(kind, known, scripts)}
      data={step}
      path={['steps', place]}
      editing={editing}
    />
  );
}
