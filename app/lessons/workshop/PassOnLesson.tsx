'use client';

import { useMemo } from 'react';
import { cautions } from '@/content/cautions';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { lessonFile } from '@/lib/files/links/lesson-file';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { LinkWithCode } from '../../parts/LinkWithCode';
import { fileWords, saveFile } from '../../parts/save-file';
import { draftTitle } from './draft-title';
import { workshopPath } from '../../parts/lesson-paths';
import styles from './workshop.module.css';

/** The lesson in a link and, where it is short enough, as a code to photograph. */
export function PassOnLesson({ text, onClose }: { text: string; onClose: () => void }) {
  const encoded = useMemo(() => encodeLesson(text), [text]);
  const link = encoded.ok ? `${location.origin}${workshopPath}#${encoded.value}` : '';
  return (
    <Dialog open onClose={onClose} title="Pass this lesson on">
      <div className={styles.passOn}>
        {encoded.ok ? (
          <>
            <p>
              The whole lesson is in the link itself; nothing is sent anywhere until you send it. Whoever opens it can
              try it, keep it and change it.
            </p>
            <LinkWithCode link={link} instead="Send the link, or the lesson as a file." />
          </>
        ) : (
          <p role="alert">
            {encoded.what} {encoded.mend}
          </p>
        )}
        <Button
          icon="save"
          onClick={() => saveFile(`${fileWords(draftTitle(text))}.yaml`, lessonFile(text), 'application/yaml')}
        >
          Save it as a file
        </Button>
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
