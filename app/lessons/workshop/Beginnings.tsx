'use client';

import { useId, useState } from 'react';
import { stringify } from 'yaml';
import { decodeState } from '@/lib/files/links/share-link';
import { LONGEST_LESSON } from '@/lib/lesson/lesson';
import { lessonDraft } from '@/lib/lesson/step-drafts';
import { scenarios } from '@/content/scenarios/scenarios';
import { Button } from '../../parts/Button';
import { Field } from '../../parts/Field';
import { toFaultOnceMarked } from '../../parts/first-fault';
import { scriptOnDesk } from '../../keep/dive-on-desk';
import { yamlPath } from '../../parts/lesson-paths';
import styles from './workshop.module.css';
import begun from './beginnings.module.css';

export interface ShelfEntry {
  readonly slug: string;
  readonly title: string;
}

interface BeginningsProps {
  lessons: readonly ShelfEntry[];
  onBegin: (text: string) => void;
}

function draftText(title: string, script: string): string {
  return stringify(lessonDraft(title, script), { lineWidth: 0 });
}

/** The ways to begin a lesson: from nothing, from the desk, from one on the shelf, from a file. */
export function Beginnings({ lessons, onBegin }: BeginningsProps) {
  const id = useId();
  const [slug, setSlug] = useState(lessons[0]?.slug ?? '');
  const [link, setLink] = useState('');
  const [noLink, setNoLink] = useState<string>();
  const [failed, setFailed] = useState<string>();

  const fromShelf = async () => {
    try {
      const response = await fetch(yamlPath(slug));
      if (!response.ok) throw new Error(response.statusText);
      onBegin(await response.text());
    } catch {
      setFailed('The lesson could not be fetched. Open it once while online, and try again.');
    }
  };
  const fromDesk = async () => {
    const script = await scriptOnDesk().catch(() => undefined);
    if (script !== undefined) onBegin(draftText('A lesson from the desk', script));
    else setFailed('There is no desk kept on this machine yet. Open the desk, write a dive, and come back.');
  };
  const fromLink = (form: HTMLFormElement) => {
    if (link.trim() === '') {
      setNoLink('Paste the link of a desk here first.');
      toFaultOnceMarked(form);
      return;
    }
    const fragment = link.split('#')[1] ?? link;
    const read = decodeState(fragment);
    if (read.ok) onBegin(draftText(read.state.title ?? 'A lesson from a desk', read.state.script));
    else setFailed(`${read.what} ${read.mend}`);
  };
  const fromFile = async (file: File | undefined) => {
    if (!file) return;
    // A character takes up to four bytes.
    const text = file.size > LONGEST_LESSON * 4 ? undefined : await file.text();
    if (text === undefined || text.length > LONGEST_LESSON)
      setFailed(`“${file.name}” is too large for a lesson: at most ${LONGEST_LESSON} characters are read.`);
    else onBegin(text);
  };

  return (
    <div className={begun.beginnings}>
      <p role="alert">{failed}</p>
      <div className={begun.beginning}>
        <h3>From nothing</h3>
        <p>A dive, a text and a summing up, to be changed into your own.</p>
        <Button kind="primary" icon="plus" onClick={() => onBegin(draftText('A new lesson', scenarios[0].script))}>
          New lesson
        </Button>
      </div>
      <div className={begun.beginning}>
        <h3>From the desk</h3>
        <p>The dive as you left it there, or one someone passed on as a link.</p>
        <Button onClick={() => void fromDesk()}>Take the dive on the desk</Button>
        <form
          className={styles.inline}
          onSubmit={(event) => {
            event.preventDefault();
            fromLink(event.currentTarget);
          }}
        >
          <Field
            label="Link to a desk"
            value={link}
            error={noLink}
            onChange={(event) => {
              setLink(event.target.value);
              setNoLink(undefined);
            }}
          />
          <Button type="submit">Take its dive</Button>
        </form>
      </div>
      <div className={begun.beginning}>
        <h3>From a lesson on the shelf</h3>
        <p>A copy to change; the shelf stays as it is.</p>
        <div className={styles.inline}>
          <div className={styles.field}>
            <label htmlFor={id}>Lesson</label>
            <select id={id} value={slug} onChange={(event) => setSlug(event.target.value)}>
              {lessons.map((lesson) => (
                <option key={lesson.slug} value={lesson.slug}>
                  {lesson.title}
                </option>
              ))}
            </select>
          </div>
          <Button onClick={() => void fromShelf()}>Copy the lesson</Button>
        </div>
      </div>
      <div className={begun.beginning}>
        <h3>From a file</h3>
        <p>A lesson someone exported, as YAML.</p>
        <label className={begun.file}>
          Import a file
          <input
            type="file"
            accept=".yaml,.yml,application/yaml,text/yaml"
            onChange={(event) => {
              void fromFile(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
        </label>
      </div>
    </div>
  );
}
