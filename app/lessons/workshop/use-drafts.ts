import { useCallback, useEffect, useRef, useState } from 'react';
import { useStatus } from '../../parts/status';
import { newName } from '../../desk/keep/desk-record';
import { openShelf } from '../../keep/open-shelf';
import { reasonOf, type RefusalReason } from '../../keep/shelf';
import { dropDraft, keepDraft, keptDrafts, newDraft, type Draft } from './drafts';

/** How long the writer rests before a lesson is kept, ms. */
const RESTS_MS = 500;

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
  const due = useRef(new Map<string, ReturnType<typeof setTimeout>>());
  const [writer] = useState(newName);
  /** When what is kept of each lesson was written, as far as this window knows. */
  const standsFor = useRef(new Map<string, string>());

  const show = useCallback((drafts: readonly Draft[]) => {
    now.current = drafts;
    setAll(drafts);
  }, []);

  useEffect(() => {
    let here = true;
    void openShelf()
      .then(keptDrafts)
      .then(({ drafts: kept, unread: strange }) => {
        if (here) setUnread(strange);
        for (const { name, savedAt } of kept) standsFor.current.set(name, savedAt);
        // What was begun before the shelf answered stays.
        if (here) show([...now.current, ...kept.filter(({ name }) => !now.current.some((own) => own.name === name))]);
      })
      .catch((error: unknown) => {
        if (!here) return;
        show(now.current);
        setRefused(reasonOf(error));
      });
    return () => {
      here = false;
    };
  }, [show]);

  const keep = useCallback(
    (unsigned: Draft) => {
      const draft = { ...unsigned, writer };
      void openShelf()
        .then((shelf) => keepDraft(shelf, draft, standsFor.current.get(draft.name)))
        .then(
          (others) => {
            setRefused(undefined);
            standsFor.current.set(draft.name, draft.savedAt);
            if (!others) return;
            show([...now.current.filter(({ name }) => name !== others.name), others]);
            useStatus
              .getState()
              .say(
                'This lesson was changed in another window too. What was written there is kept as a lesson of its own.',
              );
          },
          (error: unknown) => setRefused(reasonOf(error)),
        );
    },
    [show, writer],
  );

  // The last words are kept before the window goes.
  useEffect(() => {
    const timers = due.current;
    const hurry = () => {
      for (const [name, timer] of timers) {
        clearTimeout(timer);
        const draft = now.current.find((one) => one.name === name);
        if (draft) keep(draft);
      }
      timers.clear();
    };
    document.addEventListener('visibilitychange', hurry);
    window.addEventListener('pagehide', hurry);
    return () => {
      hurry();
      document.removeEventListener('visibilitychange', hurry);
      window.removeEventListener('pagehide', hurry);
    };
  }, [keep]);

  const add = useCallback(
    (text: string) => {
      const draft = newDraft(text);
      show([draft, ...now.current]);
      keep(draft);
      return draft;
    },
    [show, keep],
  );

  const change = useCallback(
    (name: string, text: string) => {
      const before = now.current.find((draft) => draft.name === name);
      if (!before || before.text === text) return;
      const draft = { ...before, text, savedAt: new Date().toISOString() };
      show(now.current.map((one) => (one.name === name ? draft : one)));
      clearTimeout(due.current.get(name));
      due.current.set(
        name,
        setTimeout(() => {
          due.current.delete(name);
          const latest = now.current.find((one) => one.name === name);
          if (latest) keep(latest);
        }, RESTS_MS),
      );
    },
    [show, keep],
  );

  const drop = useCallback(
    (name: string) => {
      const gone = now.current.find((draft) => draft.name === name);
      clearTimeout(due.current.get(name));
      due.current.delete(name);
      show(now.current.filter((draft) => draft.name !== name));
      void openShelf()
        .then((shelf) => dropDraft(shelf, name))
        .catch((error: unknown) => setRefused(reasonOf(error)));
      return gone;
    },
    [show],
  );

  const bringBack = useCallback(
    (draft: Draft) => {
      show([draft, ...now.current]);
      keep(draft);
    },
    [show, keep],
  );

  return { all, unread, refused, add, change, drop, bringBack };
}
