import { useEffect, useMemo, useRef, useState } from 'react';
import { startAutosave, type Autosave } from '../../keep/autosave';
import { newName } from '../../keep/new-name';
import { openShelf } from '../../keep/open-shelf';
import { put, reasonOf, type RefusalReason } from '../../keep/shelf';
import { useStatus } from '../../parts/status';
import { draftKind, keepLastWords, keptDrafts, type Draft } from './drafts';

export interface Drafts {
  /** Undefined until the shelf has answered. */
  readonly all: readonly Draft[] | undefined;
  /** Records of lessons that can't be read here. */
  readonly unread: readonly unknown[];
  /** Why the last change could not be kept, if it could not. */
  readonly refused: RefusalReason | undefined;
  readonly add: (text: string) => Draft;
  readonly change: (name: string, text: string) => void;
  readonly drop: (name: string) => Draft | undefined;
  readonly bringBack: (draft: Draft) => void;
}

/** The lessons made on this machine, kept as they change. */
export function useDrafts(): Drafts {
  const [all, setAll] = useState<readonly Draft[]>();
  const [unread, setUnread] = useState<readonly unknown[]>([]);
  const [refused, setRefused] = useState<RefusalReason>();
  const now = useRef<readonly Draft[]>([]);
  const keepers = useRef(new Map<string, Autosave>());
  const [visit] = useState(newName);

  const doing = useMemo(() => {
    const show = (drafts: readonly Draft[]) => {
      now.current = drafts;
      setAll(drafts);
    };
    const named = (name: string) => now.current.find((draft) => draft.name === name);
    const keeperOf = ({ name, revision }: Draft, isNew: boolean): Autosave => {
      const known = keepers.current.get(name);
      if (known) return known;
      const keeper = startAutosave({
        kind: draftKind,
        name,
        shelf: openShelf(),
        visit,
        revision: isNew ? undefined : revision,
        content: () => ({ name, text: named(name)?.text ?? '' }),
        onKept(beside) {
          setRefused(undefined);
          const others = Object.values(beside) as Draft[];
          if (others.length === 0) return;
          show([...now.current.filter((draft) => !(draft.name in beside)), ...others]);
          useStatus
            .getState()
            .say(
              'This lesson was changed in another window too. What was written there is kept as a lesson of its own.',
            );
        },
        onRefused: setRefused,
      });
      keepers.current.set(name, keeper);
      return keeper;
    };
    const place = (draft: Draft) => {
      show([draft, ...now.current]);
      const keeper = keeperOf(draft, true);
      keeper.changed('document');
      keeper.hurry();
    };
    return {
      show,
      add(text: string): Draft {
        const name = `${draftKind.name}${newName()}`;
        const draft: Draft = { version: 1, name, text, visit, revision: name, savedAt: new Date().toISOString() };
        place(draft);
        return draft;
      },
      change(name: string, text: string) {
        const before = named(name);
        if (!before || before.text === text) return;
        const draft = { ...before, text, savedAt: new Date().toISOString() };
        show(now.current.map((one) => (one.name === name ? draft : one)));
        keeperOf(before, false).changed('document');
      },
      drop(name: string): Draft | undefined {
        const gone = named(name);
        const stopped = keepers.current.get(name)?.stop();
        keepers.current.delete(name);
        show(now.current.filter((draft) => draft.name !== name));
        void Promise.resolve(stopped)
          .then(openShelf)
          .then((shelf) => put(shelf, name, undefined))
          .catch((error: unknown) => setRefused(reasonOf(error)));
        return gone;
      },
      bringBack: place,
    };
  }, [visit]);

  useEffect(() => {
    let here = true;
    const open = async () => {
      const shelf = await openShelf();
      await keepLastWords(shelf).catch(() => undefined);
      const { drafts: kept, unread: strange } = await keptDrafts(shelf);
      if (!here) return;
      setUnread(strange);
      // What was begun before the shelf answered stays.
      doing.show([...now.current, ...kept.filter(({ name }) => !now.current.some((own) => own.name === name))]);
    };
    open().catch((error: unknown) => {
      if (!here) return;
      doing.show(now.current);
      setRefused(reasonOf(error));
    });
    const all = keepers.current;
    // The last words are kept before the window goes.
    const hurry = () => all.forEach((keeper) => keeper.hurry());
    document.addEventListener('visibilitychange', hurry);
    window.addEventListener('pagehide', hurry);
    return () => {
      here = false;
      hurry();
      document.removeEventListener('visibilitychange', hurry);
      window.removeEventListener('pagehide', hurry);
    };
  }, [doing]);

  return { all, unread, refused, ...doing };
}
