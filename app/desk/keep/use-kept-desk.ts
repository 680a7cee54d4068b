import { useEffect, useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../desk-context';
import type { DeskStore } from '../desk-store';
import { startAutosave, type Autosave } from './autosave';
import { newName } from './desk-record';
import { deskFrom, viewOf } from './desk-view';
import { firstRemark } from './dive-title';
import { changeVisit } from './last-visit';
import { clearAddress, linkInAddress, readLink } from './opened-link';
import { openShelf } from './open-shelf';
import { restoreDesk } from './restore-desk';
import { saveFile } from './save-file';
import { diveRecord, savedDive } from './saved-dive';
import { listDives } from './saved-dives';
import { put, REFUSALS, type RefusalReason, type Shelf } from './shelf';
import { otherWindows } from './windows';

export interface KeptDesk {
  /** Whether the desk is on this machine, or why it can't be. */
  readonly kept: 'opening' | 'kept' | RefusalReason;
  /** Something that stays on the screen until it is put away. */
  readonly notice: string | undefined;
  readonly putAway: () => void;
}

const say = (...message: Parameters<ReturnType<typeof useStatus.getState>['say']>) => useStatus.getState().say(...message);

/** Keeps the desk between visits and opens what a link carries: the link first, else what was kept, else what stands there. */
export function useKeptDesk(): KeptDesk {
  const store = useDeskStore();
  const [kept, setKept] = useState<KeptDesk['kept']>('opening');
  const [notice, setNotice] = useState<string>();

  useEffect(() => {
    const visit = newName();
    let stopped = false;
    let autosave: Autosave | undefined;
    let toldOfOther = false;
    let refused = false;
    const windows = otherWindows((word) => {
      if (word.about !== 'desk' || word.visit === visit || toldOfOther) return;
      toldOfOther = true;
      say('The desk was changed in another window too. Each window keeps its own: what one writes over goes among the saved dives.');
    });

    const openLink = async (shelf: Shelf) => {
      const link = linkInAddress();
      if (link === undefined) return;
      const told = await openLinked(store, shelf, link);
      if (stopped) return;
      setNotice(told);
    };

    const begin = async () => {
      const shelf = await openShelf();
      if (stopped) return;
      const restored = await restoreDesk(shelf, changeVisit(visit)).catch(() => undefined);
      if (stopped) return;
      if (restored?.desk) {
        const touched = store.getState().past.length > 0;
        store.getState().open(deskFrom(restored.desk.script, restored.desk.view, store.getState()), touched ? undefined : 'fresh');
      }
      if (restored?.setAside !== undefined) tellOfSetAside(shelf, restored.setAside);
      setKept('kept');
      autosave = startAutosave({
        store,
        shelf,
        visit,
        revision: restored?.revision,
        onKept(overOther) {
          toldOfOther = false;
          refused = false;
          setKept('kept');
          windows.tell({ about: 'desk', visit });
          if (!overOther) return;
          windows.tell({ about: 'dives' });
          say('The desk is open in another window too. What was on it there is among the saved dives.');
        },
        onRefused(reason) {
          setKept(reason);
          if (!refused) say(REFUSALS[reason]);
          refused = true;
        },
      });
      await openLink(shelf);
    };
    void begin();

    const hurry = () => autosave?.hurry();
    const hidden = () => document.visibilityState === 'hidden' && hurry();
    const linked = () => void openShelf().then(openLink);
    window.addEventListener('pagehide', hurry);
    document.addEventListener('visibilitychange', hidden);
    window.addEventListener('hashchange', linked);
    return () => {
      stopped = true;
      // Left for another screen of the app: the page stays, and so does the time to write.
      autosave?.hurry();
      autosave?.stop();
      windows.close();
      window.removeEventListener('pagehide', hurry);
      document.removeEventListener('visibilitychange', hidden);
      window.removeEventListener('hashchange', linked);
    };
  }, [store]);

  return { kept, notice, putAway: () => setNotice(undefined) };
}

/** Puts a link's desk in place of this one, which stays to be undone and among the saved dives. Returns what went wrong. */
async function openLinked(store: DeskStore, shelf: Shelf, link: string): Promise<string | undefined> {
  const read = await readLink(link);
  if (!read.ok) {
    clearAddress();
    return `${read.what} ${read.mend} Your own desk is open meanwhile.`;
  }
  if (store.getState().base) {
    clearAddress();
    return 'A dive is being steered by hand. End it, then open the link again.';
  }
  const { script, title, view } = read.state;
  const aside = await keepBeside(store, shelf, script);
  store.getState().open(deskFrom(script, view, store.getState()));
  const opened = store.getState();
  const unsubscribe = store.subscribe((now) => {
    if (now.script === opened.script && now.pictures === opened.pictures && now.covered === opened.covered && now.presented === opened.presented && now.rules === opened.rules) return;
    unsubscribe();
    clearAddress();
  });
  say(`Opened “${title ?? firstRemark(script) ?? 'a dive'}” from the link.${aside ? ' What was on your desk is among your saved dives.' : ''}`);
  return read.note;
}

/** Saves the dive on the desk before another takes its place, unless it is the same, saved already, or a ready one. */
async function keepBeside(store: DeskStore, shelf: Shelf, next: string): Promise<boolean> {
  const state = store.getState();
  const { script } = state;
  if (script === next || scenarios.some((ready) => ready.script === script)) return false;
  try {
    const { dives } = await listDives(shelf);
    if (dives.some((dive) => dive.script === script)) return false;
    const id = newName();
    await put(shelf, diveRecord(id), savedDive({ id, title: `${firstRemark(script) ?? 'A dive'} (left on the desk)`, script, view: viewOf(state) }));
    return true;
  } catch {
    return false;
  }
}

function tellOfSetAside(shelf: Shelf, name: string): void {
  say('What was kept of your last visit can’t be read. It is set aside, not lost, and the desk opens with a ready dive.', {
    label: 'Save it as a file',
    run: () => void shelf.read(name).then((record) => saveFile('halftime-unread.json', JSON.stringify(record, undefined, 1), 'application/json')),
  });
}
