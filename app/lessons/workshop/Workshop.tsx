'use client';

import { useEffect, useState } from 'react';
import type { Term } from '@/lib/lesson/glossary';
import { isLessonLink } from '@/lib/files/links/lesson-link';
import { saveUnread } from '../../keep/document-kind';
import { Button } from '../../parts/Button';
import { useStatus } from '../../parts/status';
import { lessonOfLink } from '../lesson-of-link';
import { StageWaiting } from '../player/stage/StageWaiting';
import { knownNames } from '../../stage/known-names';
import { Beginnings, type ShelfEntry } from './Beginnings';
import { draftTitle } from './draft-title';
import { draftKind } from './drafts';
import { Editor } from './editor/Editor';
import { Stranger } from './Stranger';
import { useDrafts } from './use-drafts';
import styles from './workshop.module.css';
import begun from './beginnings.module.css';

interface WorkshopProps {
  terms: readonly Pick<Term, 'id'>[];
  lessons: readonly ShelfEntry[];
}

/** Lessons made in the browser, without code. */
export function Workshop({ terms, lessons }: WorkshopProps) {
  const [known] = useState(() => knownNames(terms));
  const drafts = useDrafts();
  const [open, setOpen] = useState<string>();
  const [brought, setBrought] = useState<string>();
  const [badLink, setBadLink] = useState<string>();
  const say = useStatus((state) => state.say);

  // The lesson stays in the address while it is taken, for a reload. Once it is put away, going back opens it no more.
  const leaveLink = () => window.history.replaceState(window.history.state, '', window.location.pathname);

  useEffect(() => {
    const follow = async () => {
      const { hash } = window.location;
      if (!isLessonLink(hash)) return;
      const read = await lessonOfLink(hash);
      if (window.location.hash !== hash) return;
      setBrought(read.ok ? read.value : undefined);
      setBadLink(read.ok ? undefined : `${read.what} ${read.mend}`);
      if (!read.ok) leaveLink();
    };
    const onHash = () => void follow();
    onHash();
    window.addEventListener('hashchange', onHash);
    return () => window.removeEventListener('hashchange', onHash);
  }, []);

  const begin = (text: string) => setOpen(drafts.add(text).name);
  const draft = drafts.all?.find(({ name }) => name === open);

  if (brought !== undefined) {
    return (
      <Stranger
        text={brought}
        known={known}
        onKeep={() => {
          begin(brought);
          leaveLink();
          setBrought(undefined);
        }}
        onLeave={() => {
          leaveLink();
          setBrought(undefined);
        }}
      />
    );
  }
  return (
    <div className={styles.workshop}>
      {badLink && <p role="alert">{badLink}</p>}
      {drafts.refused && <p role="alert">{draftKind.words.refused[drafts.refused]}</p>}
      {draft ? (
        <Editor
          key={draft.name}
          text={draft.text}
          known={known}
          onText={(text) => drafts.change(draft.name, text)}
          onClose={() => setOpen(undefined)}
        />
      ) : (
        <>
          <section aria-labelledby="own-lessons">
            <h2 id="own-lessons">Your lessons</h2>
            {!drafts.all && <StageWaiting />}
            {drafts.unread.length > 0 && (
              <p className={styles.tools}>
                {drafts.unread.length === 1 ? 'One lesson' : `${drafts.unread.length} lessons`} kept here can’t be read
                by this version. What was kept stays where it is.
                <Button icon="save" onClick={() => saveUnread(draftKind, { records: drafts.unread })}>
                  Save it as a file
                </Button>
              </p>
            )}
            {drafts.all?.length === 0 && <p>None yet. They are kept on this machine and nowhere else.</p>}
            {(drafts.all?.length ?? 0) > 0 && (
              <ul className={begun.drafts}>
                {drafts.all?.map(({ name, text, savedAt }) => (
                  <li key={name}>
                    <span>
                      <b>{draftTitle(text)}</b>
                      <span className={styles.hint}>
                        {' '}
                        changed {new Date(savedAt).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}
                      </span>
                    </span>
                    <span className={styles.tools}>
                      <Button onClick={() => setOpen(name)} aria-label={`Open ${draftTitle(text)}`}>
                        Open
                      </Button>
                      <Button
                        kind="quiet"
                        aria-label={`Delete ${draftTitle(text)}`}
                        onClick={() => {
                          const gone = drafts.drop(name);
                          if (gone)
                            say(`“${draftTitle(gone.text)}” is deleted.`, {
                              label: 'Bring it back',
                              run: () => drafts.bringBack(gone),
                            });
                        }}
                      >
                        Delete
                      </Button>
                    </span>
                  </li>
                ))}
              </ul>
            )}
          </section>
          <section aria-labelledby="begin-lesson">
            <h2 id="begin-lesson">Begin one</h2>
            <Beginnings lessons={lessons} onBegin={begin} />
          </section>
        </>
      )}
    </div>
  );
}
