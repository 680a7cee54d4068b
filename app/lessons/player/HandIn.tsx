'use client';

import { useMemo, useState } from 'react';
import { cautions } from '@/content/cautions';
import { encodeAnswers } from '@/lib/files/links/answers-link';
import { writeHandedIn } from '@/lib/files/handed-in';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import { classResultsPath } from '../../parts/lesson-paths';
import { LinkWithCode } from '../../parts/LinkWithCode';
import { fileWords, saveFile } from '../../parts/save-file';
import { Segmented } from '../../parts/Segmented';
import { useProgress } from './progress-store';
import styles from './player.module.css';

const WHAT = [
  { value: 'one', label: 'This lesson' },
  { value: 'all', label: 'All I have begun' },
] as const;

interface HandInProps {
  slug: string;
  /** Of the lesson or, on a page of its own, of the question. */
  title: string;
  /** Where one question is answered on a page of its own: the site that opens what is handed in, if it is known. */
  alone?: { readonly site: string | undefined };
  onClose: () => void;
}

/** What was answered, for whoever teaches: as a link, a code or a file. Nothing is sent until the learner sends it. */
export function HandIn({ slug, title, alone, onClose }: HandInProps) {
  const progress = useProgress((state) => state.progress);
  const [what, setWhat] = useState<(typeof WHAT)[number]['value']>('one');
  const [name, setName] = useState('');
  const text = useMemo(
    () => writeHandedIn(progress, name, what === 'one' ? slug : undefined),
    [progress, name, what, slug],
  );
  const site = alone ? alone.site : location.origin;
  const encoded = useMemo(() => encodeAnswers(text), [text]);
  const link = encoded.ok ? `${site}${classResultsPath}#${encoded.value}` : '';
  return (
    <Dialog open onClose={onClose} title="Hand in">
      <div className={styles.linkDialog}>
        <p>
          Your answers, the first and the later ones, with your reasons and the curves you drew. They are in the link or
          the file itself; nothing is sent anywhere until you send it.
        </p>
        {!alone && <Segmented label="What is handed in" segments={WHAT} value={what} onChange={setWhat} />}
        <Field
          label="Your name, if you wish"
          hint="Left empty, nobody’s name is in it."
          value={name}
          maxLength={80}
          onChange={(event) => setName(event.target.value)}
        />
        {site === undefined ? (
          <p>Save the file and send it to whoever teaches.</p>
        ) : encoded.ok ? (
          <LinkWithCode link={link} instead="Send the link or the file." />
        ) : (
          <p role="alert">
            {encoded.what} {encoded.mend}
          </p>
        )}
        <Button
          icon="save"
          onClick={() =>
            saveFile(`halftime-${fileWords(what === 'one' ? title : 'lessons')}-answers.json`, text, 'application/json')
          }
        >
          Save as a file
        </Button>
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
