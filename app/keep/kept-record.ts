import { cautions } from '@/content/cautions';
import { saveFile } from '../parts/save-file';
import { safeStorage } from '../parts/safe-storage';
import { useStatus } from '../parts/status';

/** What is said of a record to the person whose work it is. */
export interface RecordWords {
  /** What it is, as in “What was kept of your last sheet can’t be read”. */
  readonly unread: string;
  readonly full: string;
  readonly blocked: string;
  /** A file's name for what could not be read. */
  readonly fileName: string;
}

interface RecordOptions<Value> {
  /** Its name in the browser's small storage. */
  readonly name: string;
  /** Makes a value of a stored one of any shape; undefined where it is none, such as one of a newer version. */
  readonly read: (stored: unknown) => Value | undefined;
  /** The value in the form it is stored in. */
  readonly write: (value: Value) => unknown;
  readonly words: RecordWords;
  /** Another window has written it. */
  readonly onOther: (value: Value) => void;
}

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

/**
 * One record of this person's work in the browser's small storage, shared by all windows. What is kept is never lost to
 * what can't be read: an unreadable record is moved aside whole, told of, and handed over as a file.
 */
export function keptRecord<Value>({ name, read, write, words, onOther }: RecordOptions<Value>): KeptRecord<Value> {
  /** The text this window stands for. */
  let known: string | null | undefined;
  let refusalTold = false;

  function now(): Value | undefined {
    const text = textAt(name);
    known = text;
    if (text === null) return undefined;
    const value = parsed(text, read);
    if (value === undefined) setAside(text);
    return value;
  }

  function setAside(text: string): void {
    const aside = freeName(name);
    // There may be no room for it twice.
    safeStorage.removeItem(name);
    safeStorage.setItem(aside, text);
    if (textAt(aside) !== text) safeStorage.setItem(name, text);
    known = textAt(name);
    useStatus.getState().say(`${words.unread} It is set aside, not lost.`, {
      label: 'Save it as a file',
      run: () =>
        saveFile(
          words.fileName,
          JSON.stringify({ caution: cautions.general, record: text }, undefined, 1),
          'application/json',
        ),
    });
  }

  function keep(value: Value): void {
    const text = JSON.stringify(write(value));
    safeStorage.setItem(name, text);
    if (textAt(name) === text) {
      known = text;
      refusalTold = false;
    } else if (!refusalTold) {
      refusalTold = true;
      useStatus.getState().say(takesALetter() ? words.full : words.blocked);
    }
  }

  const heard = ({ key, newValue }: StorageEvent) => {
    if (key !== name || newValue === null) return;
    // Written by a version this one does not understand: nothing is done before something is to be written here.
    const value = parsed(newValue, read);
    if (value === undefined) return;
    known = newValue;
    onOther(value);
  };
  return {
    now,
    isOthers: () => textAt(name) !== known,
    keep,
    listen() {
      window.addEventListener('storage', heard);
      return () => window.removeEventListener('storage', heard);
    },
  };
}

function textAt(name: string): string | null {
  return safeStorage.getItem(name) as string | null;
}

function parsed<Value>(text: string, read: (stored: unknown) => Value | undefined): Value | undefined {
  try {
    return read(JSON.parse(text));
  } catch {
    return undefined;
  }
}

function freeName(name: string): string {
  for (let number = 1; ; number += 1) {
    const aside = `${name}.aside-${number}`;
    if (textAt(aside) === null) return aside;
  }
}

/** Storage that takes a letter and not a record is full; one that takes nothing is blocked. */
function takesALetter(): boolean {
  const probe = 'halftime.probe';
  safeStorage.setItem(probe, 'a');
  const taken = textAt(probe) === 'a';
  safeStorage.removeItem(probe);
  return taken;
}
