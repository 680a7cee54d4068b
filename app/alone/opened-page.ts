import { parseScript } from '@/lib/dive/script';
import { decodeState } from '@/lib/files/links/share-link';
import { usePreferences } from '../parts/preferences';
import { diveTitle } from '../pictures/dive-title';
import { createDeskStore, type DeskStore } from '../stage/desk-store';
import { deskViewSchema } from '../stage/desk-view';

export type OpenedPage =
  | {
      readonly ok: true;
      readonly store: DeskStore;
      readonly title: string;
      /** What the desk opens behind its #, where this page is part of the site. */
      readonly onDesk: string | undefined;
      readonly note: string | undefined;
    }
  | { readonly ok: false; readonly what: string; readonly mend: string };

const CHANGED = {
  ok: false,
  what: 'The dive in this file is not as it was saved: it has been changed, or part of it is missing.',
  mend: 'Ask for the file again, or save it anew from the desk.',
} as const;

/** Reads what a page of its own carries, checked anew: `inFile` where it is in the page itself, else behind its #. */
export function openPage(packed: string, inFile: boolean): OpenedPage {
  const read = decodeState(packed, deskViewSchema);
  if (!read.ok) return inFile ? CHANGED : read;
  const { script, title, view } = read.state;
  // A desk whose script makes no sense yet shows the last one that did.
  const sound = [script, view?.soundScript].find((one) => one !== undefined && parseScript(one).ok);
  if (sound === undefined)
    return {
      ok: false,
      what: 'The script of this dive has a fault, so there is no dive to show.',
      mend: 'Mend it on the desk and save it from there.',
    };
  const store = createDeskStore(
    {
      script: sound,
      pictures: view?.pictures ?? [],
      covered: view?.covered ?? [],
      rules: view?.rules,
      overlay: view?.overlay,
    },
    true,
  );
  store.getState().setCursor(view?.cursorS ?? 0);
  if (view?.view) store.getState().setView(view.view);
  if (view?.unit !== undefined) store.getState().chooseUnit(view.unit);
  const { scene } = store.getState();
  return {
    ok: true,
    store,
    title: title ?? diveTitle(sound, scene, usePreferences.getState().units),
    onDesk: inFile ? undefined : packed,
    note: read.note,
  };
}
