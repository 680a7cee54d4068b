import { startAutosave, type Autosave } from '../../keep/autosave';
import type { DeskState } from '../../stage/desk-state';
import type { DeskStore } from '../../stage/desk-store';
import { deskKind, type DeskContent } from './desk-record';
import { DOCUMENT_FIELDS, viewOf } from '../../stage/desk-view';

/** While a dive is steered, it is written this often, ms: so much is lost at most where a browser dies without a word. */
const STEERED_EVERY_MS = 2000;

type Keeping = Omit<Parameters<typeof startAutosave<DeskContent>>[0], 'kind' | 'name' | 'content'>;

/** Keeps the desk as it changes, until stopped. */
export function keepDesk(store: DeskStore, keeping: Keeping): Pick<Autosave, 'hurry' | 'stop'> {
  const autosave = startAutosave({
    ...keeping,
    kind: deskKind,
    content: () => ({ script: store.getState().script, desk: viewOf(store.getState()) }),
  });
  let steeredTold = store.getState().run;
  let steeredToldMs = -Infinity;
  const unsubscribe = store.subscribe((now, before) => {
    const what = changeOf(now, before);
    // A run grows in every frame: told of each, it would never rest long enough to be written.
    const grows = what === undefined && now.run !== steeredTold && performance.now() - steeredToldMs > STEERED_EVERY_MS;
    if (what === undefined && !grows) return;
    if (grows) {
      steeredTold = now.run;
      steeredToldMs = performance.now();
    }
    autosave.changed(what ?? 'document');
  });
  // What was done before the desk was kept is not known to be on the shelf.
  if (store.getState().past.length > 0) autosave.changed('document');
  return {
    hurry() {
      if (store.getState().run !== steeredTold) autosave.changed('document');
      steeredTold = store.getState().run;
      autosave.hurry();
    },
    stop() {
      unsubscribe();
      return autosave.stop();
    },
  };
}

function changeOf(now: DeskState, before: DeskState): 'document' | 'look' | undefined {
  const begunOrEnded = (now.run === undefined) !== (before.run === undefined);
  if (begunOrEnded || DOCUMENT_FIELDS.some((field) => now[field] !== before[field])) return 'document';
  const looks = now.view !== before.view || now.cursorS !== before.cursorS || now.unit !== before.unit;
  return looks && now.base === undefined ? 'look' : undefined;
}
