import { useEffect, useMemo, useState } from 'react';
import { usePreferences } from '../../parts/preferences';
import { isScenario, scenarioIn } from '@/content/scenarios/scenario-in';
import { scenarios } from '@/content/scenarios/scenarios';
import type { Decoded, SharedState } from '@/lib/files/links/share-link';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../../stage/desk-context';
import type { DeskStore } from '../../stage/desk-store';
import { divePageIn } from '../../parts/page-in-file';
import { takeHandOver, wayBack } from '../../parts/hand-over';
import { askedToPlay, readyDive } from '../../parts/ready-dives';
import { tellSetAside } from '../../keep/document-kind';
import { newName } from '../../keep/new-name';
import { deskKind } from './desk-record';
import { keepDesk } from './keep-desk';
import { deskFrom, deskViewSchema, DOCUMENT_FIELDS, viewOf, type DeskView } from '../../stage/desk-view';
import { firstRemark } from '../../pictures/dive-title';
import { changeVisit } from './last-visit';
import { clearAddress, linkInAddress, readLink } from './opened-link';
import { openShelf } from '../../keep/open-shelf';
import { restoreDesk } from './restore-desk';
import { diveRecord, savedDive } from './saved-dive';
import { listDives } from './saved-dives';
import { put, type RefusalReason, type Shelf } from '../../keep/shelf';
import { otherWindows } from '../../keep/windows';

export interface KeptDesk {
  /** Whether the desk is on this machine, or why it can't be. */
  readonly kept: 'opening' | 'kept' | RefusalReason;
  /** Something that stays on the screen until it is put away. */
  readonly notice: string | undefined;
  readonly putAway: () => void;
  /** Where the dive came from, if that is a place to go back to. */
  readonly back?: string | undefined;
}

const say = (...message: Parameters<ReturnType<typeof useStatus.getState>['say']>) =>
  useStatus.getState().say(...message);

/**
 * Keeps the desk between visits and opens what a link carries: the link first, else what another
 * screen left for it, else what was kept, else what stands there.
 */
export function useKeptDesk(): KeptDesk {
  const store = useDeskStore();
  const [kept, setKept] = useState<KeptDesk['kept']>('opening');
  const [notice, setNotice] = useState<string>();
  const [back, setBack] = useState<string>();

  useEffect(() => {
    const visit = newName();
    let stopped = false;
    let autosave: ReturnType<typeof keepDesk> | undefined;
    let toldOfOther = false;
    let refused = false;
    const windows = otherWindows((word) => {
      if (word.about !== 'desk' || word.visit === visit || toldOfOther) return;
      toldOfOther = true;
      say(
        'The desk was changed in another window too. Each window keeps its own: what one writes over goes among the saved dives.',
      );
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
        const { past, script } = store.getState();
        const touched = past.length > 0;
        // A ready dive may have followed the units by itself.
        const typed = touched && !scenarios.some((ready) => isScenario(ready, script));
        store
          .getState()
          .open(deskFrom(restored.desk.script, restored.desk.view, store.getState()), touched ? undefined : 'fresh');
        if (typed)
          say('Your desk is as you left it. What you did while the page was opening is one Undo away.', {
            label: 'Undo',
            run: () => store.getState().undo(),
          });
      }
      if (restored && restored.found.length > 0)
        say(
          `${restored.found.map((title) => `“${title}”`).join(', ')}: from a window that was closed, now among your saved dives.`,
        );
      const aside = restored?.setAside;
      if (aside) tellSetAside(deskKind, aside.record, () => shelf.read(aside.name));
      autosave = keepDesk(store, {
        shelf,
        visit,
        revision: restored?.revision,
        onKept(beside) {
          toldOfOther = false;
          refused = false;
          setKept('kept');
          windows.tell({ about: 'desk', visit });
          if (Object.keys(beside).length === 0) return;
          windows.tell({ about: 'dives' });
          say('The desk is open in another window too. What was on it there is among the saved dives.');
        },
        onRefused(reason) {
          setKept(reason);
          if (!refused) say(deskKind.words.refused[reason]);
          refused = true;
        },
      });
      const handed = takeHandOver();
      setBack(wayBack(handed));
      if (handed) await putOnDesk(store, shelf, handed, 'here');
      await openLink(shelf);
      // Only now does nothing take the place of what is on the desk.
      if (!stopped && !refused) setKept('kept');
    };
    void begin();

    // A page of its own dropped anywhere on the desk opens as a link with the same dive would.
    const dragged = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const dropped = async (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      if (!file || event.defaultPrevented) return;
      event.preventDefault();
      const fragment = await divePageIn(file);
      if (stopped) return;
      if (fragment === undefined) {
        say(`“${file.name}” is no dive saved as a page of its own. Recorded dives are opened on “Bring a dive”.`);
        return;
      }
      const told = await openLinked(store, await openShelf(), fragment);
      if (!stopped) setNotice(told);
    };
    const drop = (event: DragEvent) => void dropped(event);
    document.addEventListener('dragover', dragged);
    document.addEventListener('drop', drop);

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
      document.removeEventListener('dragover', dragged);
      document.removeEventListener('drop', drop);
      window.removeEventListener('pagehide', hurry);
      document.removeEventListener('visibilitychange', hidden);
      window.removeEventListener('hashchange', linked);
    };
  }, [store]);

  return useMemo(() => ({ kept, notice, back, putAway: () => setNotice(undefined) }), [kept, notice, back]);
}

/** Opens what a link says. Returns what went wrong, if anything did. */
async function openLinked(store: DeskStore, shelf: Shelf, link: string): Promise<string | undefined> {
  const asked = askedToPlay(link);
  const read = asked === undefined ? await readLink(link) : readReadyDive(asked);
  if (!read.ok) {
    clearAddress();
    return `${read.what} ${read.mend} Your own desk is open meanwhile.`;
  }
  await putOnDesk(store, shelf, read.state, asked === undefined ? 'from the link' : 'to play');
  if (asked !== undefined) {
    store.getState().play();
    // Whoever came by a press to watch it has the hand on it.
    if (document.activeElement === document.body)
      document.querySelector<HTMLElement>('[data-way="play"]')?.focus({ preventScroll: true });
  }
  const opened = store.getState();
  const unsubscribe = store.subscribe((now) => {
    if (DOCUMENT_FIELDS.every((field) => now[field] === opened[field])) return;
    unsubscribe();
    clearAddress();
  });
  return read.note;
}

/** A ready dive as a link would carry it: nothing covered, and the pictures that show it best. */
function readReadyDive(id: string): Decoded<DeskView> {
  const ready = readyDive(id);
  if (!ready)
    return {
      ok: false,
      what: 'The address asks for a ready dive that is not here.',
      mend: 'Choose one from the list above the script.',
    };
  const { script, title } = scenarioIn(ready, usePreferences.getState().units);
  const { pictures = ['profile', 'chase'] } = ready;
  return {
    ok: true,
    state: { script, title, view: deskViewSchema.parse({ pictures, covered: [], cursorS: 0 }) },
    note: undefined,
  };
}

/** Puts a dive that was sent here in place of the desk's, which stays to be undone and, if it is not, among the saved dives. */
async function putOnDesk(
  store: DeskStore,
  shelf: Shelf,
  { script, title, view }: SharedState<DeskView>,
  from: string,
): Promise<void> {
  const aside = await keepBeside(store, shelf, script);
  store.getState().open(deskFrom(script, view, store.getState()));
  say(
    `Opened “${title ?? firstRemark(script) ?? 'a dive'}” ${from}.${aside ? ' What was on your desk is among your saved dives.' : ''}`,
  );
}

/** Saves the dive on the desk before another takes its place, unless it is the same, saved already, or a ready one. */
async function keepBeside(store: DeskStore, shelf: Shelf, next: string): Promise<boolean> {
  const state = store.getState();
  const { script, rules, overlay, run } = state;
  const untouched = rules === undefined && overlay === undefined && run === undefined;
  if (untouched && (script === next || scenarios.some((ready) => isScenario(ready, script)))) return false;
  try {
    const { dives } = await listDives(shelf);
    if (untouched && dives.some((dive) => dive.script === script)) return false;
    const id = newName();
    await put(
      shelf,
      diveRecord(id),
      savedDive({ id, title: `${firstRemark(script) ?? 'A dive'} (left on the desk)`, script, view: viewOf(state) }),
    );
    return true;
  } catch {
    return false;
  }
}
