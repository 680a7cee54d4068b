import { startAutosave, type Autosave } from '../../keep/autosave';
import { sayLastWords } from '../../keep/last-words';
import type { DeskState, DeskStore } from '../../stage/desk-store';
import { scriptOfSteps } from '../steer/steer-run';
import { deskKind, type DeskContent } from './desk-record';
import { DOCUMENT_FIELDS, viewOf } from './desk-view';

type Keeping = Omit<Parameters<typeof startAutosave<DeskContent>>[0], 'kind' | 'name' | 'content'>;

/** Keeps the desk as it changes, until stopped. */
export function keepDesk(store: DeskStore, keeping: Keeping): Pick<Autosave, 'hurry' | 'stop'> {
  const autosave = startAutosave({
    ...keeping,
    kind: deskKind,
    content: () => ({ script: store.getState().script, desk: viewOf(store.getState()) }),
  });
  const unsubscribe = store.subscribe((now, before) => {
    const what = changeOf(now, before);
    if (what) autosave.changed(what);
  });
  return {
    hurry() {
      const { base, scene } = store.getState();
      // A dive steered by hand is no script yet: it is found among the saved dives the next time.
      if (base) {
        const visit = `${keeping.visit}-steered`;
        const script = scriptOfSteps(base, scene.dive.steps);
        sayLastWords(deskKind, visit, { ...autosave.recordNow(), visit, script });
      }
      autosave.hurry();
    },
    stop() {
      unsubscribe();
      return autosave.stop();
    },
  };
}

function changeOf(now: DeskState, before: DeskState): 'document' | 'look' | undefined {
  if (DOCUMENT_FIELDS.some((field) => now[field] !== before[field])) return 'document';
  const looks = now.view !== before.view || now.cursorS !== before.cursorS || now.unit !== before.unit;
  return looks && now.base === undefined ? 'look' : undefined;
}
