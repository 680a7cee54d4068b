import type { DeskState, DeskStore } from '../../stage/desk-store';
import { scriptOfSteps } from '../steer/steer-run';
import { forgetLastWords, newName, readDeskRecord, sayLastWords, type DeskRecord } from './desk-record';
import { DOCUMENT_FIELDS, viewOf } from './desk-view';
import { leftBehind, leftBehindBy } from './left-behind';
import { DESK, reasonOf, type RefusalReason, type Shelf } from '../../keep/shelf';

/** How long the desk rests before it is written, ms: a change of the dive, and of the place looked at. */
const RESTS_MS = 500;
const LOOKS_MS = 1500;

export interface AutosaveOptions {
  store: DeskStore;
  shelf: Shelf;
  visit: string;
  /** The revision on the shelf that the desk stands for. */
  revision: string | undefined;
  /** The desk was written; `overOther` when another window's went among the saved dives for it. */
  onKept: (overOther: boolean) => void;
  onRefused: (reason: RefusalReason) => void;
}

export interface Autosave {
  /** Writes what is not written yet where writing is instant: the window may be gone the next moment. */
  hurry: () => void;
  stop: () => void;
}

/** Keeps the desk as it changes, until stopped. */
export function startAutosave({ store, shelf, visit, revision: first, onKept, onRefused }: AutosaveOptions): Autosave {
  let revision = first;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** What is not on the shelf yet: nothing, only where the desk is looked at, or the dive itself. */
  let due: 'nothing' | 'look' | 'dive' = 'nothing';
  let writing: Promise<void> = Promise.resolve();

  const unsubscribe = store.subscribe((now, before) => {
    const changed = changeOf(now, before);
    if (changed === 'nothing') return;
    if (due !== 'dive') due = changed;
    clearTimeout(timer);
    timer = setTimeout(write, due === 'dive' ? RESTS_MS : LOOKS_MS);
  });

  function recordNow(): DeskRecord {
    const state = store.getState();
    return {
      version: 1,
      revision: newName(),
      ...(revision !== undefined && { follows: revision }),
      visit,
      savedAt: new Date().toISOString(),
      script: state.script,
      desk: viewOf(state),
    };
  }

  function write() {
    clearTimeout(timer);
    writing = writing.then(writeNow);
  }

  async function writeNow() {
    if (due === 'nothing') return;
    const what = due;
    due = 'nothing';
    const record = recordNow();
    let overOther = false;
    let written = true;
    try {
      await shelf.change(DESK, (stored) => {
        const there = readDeskRecord(stored);
        const foreign = there !== undefined && there.revision !== revision;
        written = !foreign || what === 'dive';
        if (!written) return {};
        overOther = foreign && there.script !== record.script;
        return { [DESK]: record, ...(overOther && there && { [leftBehindBy(there.visit)]: leftBehind(there) }) };
      });
      forgetLastWords([visit]);
      if (!written) return;
      revision = record.revision;
      onKept(overOther);
    } catch (error) {
      due = 'dive';
      onRefused(reasonOf(error));
    }
  }

  return {
    hurry() {
      const { base, scene } = store.getState();
      // A dive steered by hand is no script yet: it is found among the saved dives the next time.
      if (base)
        sayLastWords({ ...recordNow(), visit: `${visit}-steered`, script: scriptOfSteps(base, scene.dive.steps) });
      if (due === 'nothing') return;
      sayLastWords(recordNow());
      write();
    },
    stop() {
      unsubscribe();
      clearTimeout(timer);
    },
  };
}

function changeOf(now: DeskState, before: DeskState): 'nothing' | 'look' | 'dive' {
  if (DOCUMENT_FIELDS.some((field) => now[field] !== before[field])) return 'dive';
  const looks = now.view !== before.view || now.cursorS !== before.cursorS || now.unit !== before.unit;
  return looks && now.base === undefined ? 'look' : 'nothing';
}
