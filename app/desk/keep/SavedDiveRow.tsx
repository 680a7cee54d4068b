'use client';

import { useState, type FormEvent } from 'react';
import type { StoredDive } from '@/lib/files/records/stored-dives';
import { Button } from '../../parts/Button';
import { Field } from '../../parts/Field';
import { toFaultOnceMarked } from '../../parts/first-fault';
import { LONGEST_TITLE } from './saved-dive';
import styles from './keep.module.css';

interface SavedDiveRowProps {
  dive: StoredDive;
  onOpen: () => void;
  onRename: (title: string) => void;
  onDelete: () => void;
}

/** One saved dive: its name, when it was saved, and what can be done with it. */
export function SavedDiveRow({ dive, onOpen, onRename, onDelete }: SavedDiveRowProps) {
  const [typed, setTyped] = useState<string>();
  const [noName, setNoName] = useState<string>();
  const rename = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const title = typed?.trim() ?? '';
    if (title === '') {
      setNoName('Write a name first, or leave it as it is.');
      toFaultOnceMarked(event.currentTarget);
      return;
    }
    if (title !== dive.title) onRename(title);
    setTyped(undefined);
  };
  if (typed !== undefined) {
    return (
      <li>
        <form
          className={styles.saveForm}
          onSubmit={rename}
          onKeyDown={(event) => event.key === 'Escape' && setTyped(undefined)}
        >
          <Field
            label="New name"
            value={typed}
            maxLength={LONGEST_TITLE}
            autoFocus
            error={noName}
            onChange={(event) => {
              setTyped(event.target.value);
              setNoName(undefined);
            }}
          />
          <Button type="submit">Rename</Button>
          <Button kind="quiet" onClick={() => setTyped(undefined)}>
            Leave it
          </Button>
        </form>
      </li>
    );
  }
  return (
    <li>
      <span className={styles.diveName}>
        <b>{dive.title}</b>
        {dive.changedAt && <time dateTime={dive.changedAt}>{whenText(dive.changedAt)}</time>}
      </span>
      <span className={styles.diveDoing}>
        <Button onClick={onOpen} aria-label={`Open ${dive.title}`}>
          Open
        </Button>
        <Button kind="quiet" onClick={() => setTyped(dive.title)} aria-label={`Rename ${dive.title}`}>
          Rename
        </Button>
        <Button kind="quiet" onClick={onDelete} aria-label={`Delete ${dive.title}`}>
          Delete
        </Button>
      </span>
    </li>
  );
}

function whenText(changedAt: string): string {
  return new Date(changedAt).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
}
