'use client';

import { useEffect, useId, useRef, useState, type FormEvent } from 'react';
import type { StoredDive } from '@/lib/files/records/stored-dives';
import { Button } from '../../parts/Button';
import { Field } from '../../parts/Field';
import { toFaultOnceMarked } from '../../parts/first-fault';
import { IconButton } from '../../parts/IconButton';
import { usePreferences } from '../../parts/preferences';
import { useDeskStore } from '../../stage/desk-context';
import { viewOf } from '../../stage/desk-view';
import { diveTitle, withTitle } from '../../pictures/dive-title';
import { saveFile } from '../../parts/save-file';
import { LONGEST_TITLE } from './saved-dive';
import { SavedDiveRow } from './SavedDiveRow';
import type { ImportReport } from './saved-dives';
import { useSavedDives } from './use-saved-dives';
import styles from './keep.module.css';

/** Dives kept under a name on this machine: save, open, rename, delete, and all of them as a file. */
export function SavedDivesPanel({ onClose }: { onClose: () => void }) {
  const id = useId();
  const store = useDeskStore();
  const { dives, unread, ...doing } = useSavedDives();
  const [title, setTitle] = useState(() => {
    const { script, scene } = store.getState();
    return diveTitle(script, scene, usePreferences.getState().units);
  });
  const [noName, setNoName] = useState<string>();
  const [report, setReport] = useState<ImportReport>();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    // It makes way for whatever takes the focus under it, so that nobody works on what cannot be seen.
    const makeWay = ({ target }: FocusEvent) => {
      if (!panel.current || !(target instanceof Element) || panel.current.contains(target)) return;
      const [its, own] = [target.getBoundingClientRect(), panel.current.getBoundingClientRect()];
      if (its.right > own.left && its.left < own.right && its.bottom > own.top && its.top < own.bottom) onClose();
    };
    document.addEventListener('focusin', makeWay);
    return () => document.removeEventListener('focusin', makeWay);
  }, [onClose]);
  const name = title.trim();
  const replaces = dives?.some((dive) => dive.title === name) ?? false;

  const save = (event: FormEvent) => {
    event.preventDefault();
    if (!dives) return;
    if (name === '') {
      setNoName('Write a name for the dive first.');
      toFaultOnceMarked(panel.current);
      return;
    }
    const { script, scene, change } = store.getState();
    // What is saved under another name is called by it from then on, here too.
    const named = name === diveTitle(script, scene, usePreferences.getState().units) ? script : withTitle(script, name);
    change({ script: named });
    void doing.save(name, named, viewOf(store.getState()));
  };
  const open = (dive: StoredDive) => {
    if (doing.open(dive)) setTitle(dive.title);
  };

  return (
    <section ref={panel} className={`${styles.saved} unprinted`} aria-labelledby={`${id}-title`}>
      <header>
        <h2 id={`${id}-title`} ref={heading} tabIndex={-1}>
          Saved dives
        </h2>
        <IconButton icon="close" label="Close saved dives" onClick={onClose} />
      </header>
      <form className={styles.saveForm} onSubmit={save}>
        <Field
          label="Save this dive as"
          value={title}
          maxLength={LONGEST_TITLE}
          error={noName}
          onChange={(event) => {
            setTitle(event.target.value);
            setNoName(undefined);
          }}
        />
        <Button type="submit" kind="primary" icon="save" disabled={!dives}>
          {replaces ? 'Replace' : 'Save'}
        </Button>
      </form>
      {dives && dives.length === 0 && (
        <p>
          Nothing is saved yet. A saved dive stays in this browser, on this machine, with its pictures and what is
          covered.
        </p>
      )}
      {dives && dives.length > 0 && (
        <ul className={styles.dives} aria-label="Saved dives">
          {dives.map((dive) => (
            <SavedDiveRow
              key={dive.id}
              dive={dive}
              onOpen={() => open(dive)}
              onRename={(next) => void doing.rename(dive, next)}
              onDelete={() => {
                void doing.remove(dive);
                heading.current?.focus();
              }}
            />
          ))}
        </ul>
      )}
      {unread.length > 0 && (
        <p>
          {unread.length === 1 ? 'One record' : `${unread.length} records`} can’t be read by this version. They are
          kept, and go along when you export all.
        </p>
      )}
      <div className={styles.files}>
        <Button
          disabled={!dives || dives.length + unread.length === 0}
          onClick={() =>
            void doing
              .exported()
              .then((text) =>
                saveFile(`halftime-dives-${new Date().toISOString().slice(0, 10)}.json`, text, 'application/json'),
              )
          }
        >
          Export all as one file
        </Button>
        <label className={styles.bring}>
          Bring in a file of saved dives
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const [file] = event.target.files ?? [];
              if (file) void file.text().then(doing.imported).then(setReport);
              event.target.value = '';
            }}
          />
        </label>
      </div>
      <div role="status" className={styles.report} data-ok={report?.ok}>
        {report && (
          <ul>
            {report.sentences.map((sentence, index) => (
              <li key={index}>{sentence}</li>
            ))}
          </ul>
        )}
      </div>
    </section>
  );
}
