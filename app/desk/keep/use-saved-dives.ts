import { useEffect, useMemo, useRef, useState } from 'react';
import type { StoredDive } from '@/lib/files/records/stored-dives';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../../stage/desk-context';
import { deskFrom, type DeskView } from '../../stage/desk-view';
import { openShelf } from '../../keep/open-shelf';
import { viewOfSaved } from './saved-dive';
import { exportDives, importDives, listDives, putDive, removeDive, saveDive, type ImportReport } from './saved-dives';
import type { Unread } from '../../keep/read-each';
import { reasonOf, type Shelf } from '../../keep/shelf';
import { withTitle } from '../../pictures/dive-title';
import { deskKind } from './desk-record';
import { otherWindows, type OtherWindows } from '../../keep/windows';

interface SavedDivesDoing {
  save: (title: string, script: string, view: DeskView) => Promise<void>;
  rename: (dive: StoredDive, title: string) => Promise<void>;
  remove: (dive: StoredDive) => Promise<void>;
  /** Puts a dive on the desk; false where it can't be now, which has been said. */
  open: (dive: StoredDive) => boolean;
  exported: () => Promise<string>;
  imported: (text: string) => Promise<ImportReport>;
}

/** The saved dives of this machine, and what can be done with them; each doing says what it did and can be undone. */
export function useSavedDives(): SavedDivesDoing & {
  dives: readonly StoredDive[] | undefined;
  unread: readonly Unread[];
} {
  const store = useDeskStore();
  const [list, setList] = useState<{ dives: readonly StoredDive[] | undefined; unread: readonly Unread[] }>({
    dives: undefined,
    unread: [],
  });
  const windows = useRef<OtherWindows>(null);

  useEffect(() => {
    let stopped = false;
    const read = () =>
      void openShelf()
        .then(listDives)
        .then(
          (read) => !stopped && setList(read),
          () => undefined,
        );
    const others = otherWindows((word) => word.about === 'dives' && read());
    windows.current = others;
    read();
    return () => {
      stopped = true;
      others.close();
    };
  }, []);

  const doing = useMemo((): SavedDivesDoing => {
    const { say } = useStatus.getState();
    /** Does something to the shelf, shows the shelf as it then is, and says why where it can't be done. */
    async function change<Result>(work: (shelf: Shelf) => Promise<Result>): Promise<Result | undefined> {
      const shelf = await openShelf();
      try {
        return await work(shelf);
      } catch (error) {
        say(deskKind.words.refused[reasonOf(error)]);
        return undefined;
      } finally {
        setList(await listDives(shelf));
        windows.current?.tell({ about: 'dives' });
      }
    }
    const undo = (work: (shelf: Shelf) => Promise<unknown>) => ({ label: 'Undo', run: () => void change(work) });
    return {
      async save(title, script, view) {
        const saved = await change((shelf) => saveDive(shelf, title, script, view));
        if (!saved) return;
        const { dive, before } = saved;
        if (before)
          say(
            `Saved over “${title}”.`,
            undo((shelf) => putDive(shelf, before)),
          );
        else
          say(
            `Saved “${title}”.`,
            undo((shelf) => removeDive(shelf, dive)),
          );
      },
      async rename(dive, title) {
        const renamed = { ...dive, title, script: withTitle(dive.script, title) };
        const done = await change((shelf) => putDive(shelf, renamed).then(() => true));
        if (done)
          say(
            `“${dive.title}” is now “${title}”.`,
            undo((shelf) => putDive(shelf, dive)),
          );
      },
      async remove(dive) {
        const done = await change((shelf) => removeDive(shelf, dive).then(() => true));
        if (done)
          say(
            `Deleted “${dive.title}”.`,
            undo((shelf) => putDive(shelf, dive)),
          );
      },
      open(dive) {
        const desk = store.getState();
        if (desk.run) {
          say('A dive is being steered by hand. Keep it or throw it away, then open another.');
          return false;
        }
        desk.open(deskFrom(dive.script, viewOfSaved(dive), desk));
        say(`Opened “${dive.title}”.`, { label: 'Undo', run: () => store.getState().undo() });
        return true;
      },
      exported: async () => exportDives(await openShelf()),
      async imported(text) {
        const report = await change((shelf) => importDives(shelf, text));
        return report ?? { ok: false, sentences: ['Nothing was brought in: it could not be kept.'] };
      },
    };
  }, [store]);

  return { ...list, ...doing };
}
