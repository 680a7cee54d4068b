import { tellSetAside } from './document-kind';
import { forgetLastWords, sayLastWords } from './last-words';
import { reasonOf, type RefusalReason, type Shelf } from './shelf';
import { newName } from './new-name';
import { othersThere, speakerOf, unreadThere, type Shelved, type ShelvedKind } from './shelved';
import type { Unread } from './read-each';

/** How long a document rests before it is written, ms: after a change of itself, and of the place looked at. */
const RESTS_MS = 500;
const LOOKS_MS = 1500;

interface AutosaveOptions<Content> {
  readonly kind: ShelvedKind<Content>;
  /** The name of the document's record: the kind's own unless there are many. */
  readonly name?: string;
  readonly shelf: Shelf | Promise<Shelf>;
  readonly visit: string;
  /** The revision on the shelf that the document stands for; undefined where there is none. */
  readonly revision: string | undefined;
  /** The document as it is now. */
  readonly content: () => Content;
  /** It was written; `beside` says what was kept of another window's. */
  readonly onKept: (beside: Readonly<Record<string, unknown>>) => void;
  readonly onRefused: (reason: RefusalReason) => void;
}

export interface Autosave<Content = unknown> {
  /** The document, or only where it is looked at, is other than it was. */
  readonly changed: (what: 'document' | 'look') => void;
  /** Writes what is not written yet, and where writing is instant: the window may be gone the next moment. */
  readonly hurry: () => void;
  /** The record it would be written as now. */
  readonly recordNow: () => Shelved<Content>;
  /** Writes nothing any more; what was hurried is still written, and then it resolves. */
  readonly stop: () => Promise<void>;
}

/** Keeps one document as it changes, until stopped. */
export function startAutosave<Content extends object>(options: AutosaveOptions<Content>): Autosave<Content> {
  const { kind, name = kind.name, shelf, visit, content, onKept, onRefused } = options;
  const speaker = speakerOf(kind, { visit, name });
  let { revision } = options;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  /** What is not on the shelf yet. */
  let due: 'nothing' | 'look' | 'document' = 'nothing';
  let writing: Promise<void> = Promise.resolve();

  function recordNow(): Shelved<Content> {
    const follows = revision === undefined ? {} : { follows: revision };
    return { version: 1, revision: newName(), ...follows, visit, savedAt: new Date().toISOString(), ...content() };
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
    let beside: Readonly<Record<string, unknown>> = {};
    let aside: Unread | undefined;
    let written = true;
    try {
      const there = await shelf;
      await there.change(name, (stored) => {
        const others = othersThere(kind, record, stored);
        const unread = unreadThere(kind, name, stored);
        written = what === 'document' || (!others && !unread);
        beside = others && written ? kind.beside(others, record) : {};
        aside = written ? unread : undefined;
        return written ? { [name]: record, ...beside, ...(aside && { [aside.name]: aside.record }) } : {};
      });
      forgetLastWords(kind, [speaker]);
      if (!written) return;
      revision = record.revision;
      onKept(beside);
      // Told last: it may be seldom, and it is what somebody has to act on.
      const kept = aside;
      if (kept) tellSetAside(kind, kept.record, () => there.read(kept.name));
    } catch (error) {
      due = 'document';
      onRefused(reasonOf(error));
    }
  }

  return {
    changed(what) {
      if (stopped) return;
      if (due !== 'document') due = what;
      clearTimeout(timer);
      timer = setTimeout(write, due === 'document' ? RESTS_MS : LOOKS_MS);
    },
    hurry() {
      if (due === 'nothing' || stopped) return;
      sayLastWords(kind, speaker, recordNow());
      write();
    },
    recordNow,
    stop() {
      stopped = true;
      clearTimeout(timer);
      return writing;
    },
  };
}
