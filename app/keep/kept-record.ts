import { useStatus } from '../parts/status';
import { safeStorage } from '../parts/safe-storage';
import { readKept, tellSetAside, type DocumentKind } from './document-kind';
import { keepText, parsedText, textAt } from './small-storage';

export interface KeptRecord<Value> {
  /** What is kept now, by whichever window; undefined where nothing is, or nothing that can be read. */
  readonly now: () => Value | undefined;
  /** Whether another window has written since this one read or wrote last. */
  readonly isOthers: () => boolean;
  /** Keeps a value. Where it can't be, that is said once, and the value lasts until the page is closed. */
  readonly keep: (value: Value) => void;
  /** Hears of other windows' writing from now on, until what it returns is called. */
  readonly listen: () => () => void;
}

/** A kind of which there is one document, in the browser's small storage. */
export interface RecordKind<Value> extends DocumentKind<Value> {
  /** The record a document is kept in. */
  readonly write: (value: Value) => unknown;
}

/**
 * One record of this person's work in the browser's small storage, shared by all windows. What is kept is never lost to
 * what can't be read: an unreadable record is moved aside whole, told of, and handed over as a file.
 */
export function keptRecord<Value>(kind: RecordKind<Value>, onOther: (value: Value) => void): KeptRecord<Value> {
  const { name, words } = kind;
  /** The text this window stands for. */
  let known: string | null | undefined;
  let refusalTold = false;

  function setAside(text: string): void {
    let number = 1;
    while (textAt(`${name}.aside-${number}`) !== null) number += 1;
    // There may be no room for it twice.
    safeStorage.removeItem(name);
    if (keepText(`${name}.aside-${number}`, text)) safeStorage.setItem(name, text);
    known = textAt(name);
    tellSetAside(kind, parsedText(text), async () => text);
  }

  const heard = ({ key, newValue }: StorageEvent) => {
    if (key !== name || newValue === null) return;
    // Written by a version this one does not understand: nothing is done before something is to be written here.
    const value = readKept(kind, parsedText(newValue));
    if (value === undefined) return;
    known = newValue;
    onOther(value);
  };
  return {
    now() {
      known = textAt(name);
      if (known === null) return undefined;
      const value = readKept(kind, parsedText(known));
      if (value === undefined) setAside(known);
      return value;
    },
    isOthers: () => textAt(name) !== known,
    keep(value) {
      const text = JSON.stringify(kind.write(value));
      const refusal = keepText(name, text);
      if (!refusal) known = text;
      else if (!refusalTold) useStatus.getState().say(words.refused[refusal]);
      refusalTold = refusal !== undefined;
    },
    listen() {
      window.addEventListener('storage', heard);
      return () => window.removeEventListener('storage', heard);
    },
  };
}
