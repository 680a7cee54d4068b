'use client';

import { useMemo, useState } from 'react';
import { cautions } from '@/content/cautions';
import { encodeLesson } from '@/lib/files/lesson-link';
import { qrPicture } from '@/lib/files/qr';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import { workshopPath } from '../paths';
import styles from './workshop.module.css';

interface PassOnLessonProps {
  text: string;
  title: string;
  onClose: () => void;
}

/** The lesson in a link and, where it is short enough, as a code to photograph. */
export function PassOnLesson({ text, title, onClose }: PassOnLessonProps) {
  const [told, setTold] = useState('');
  const encoded = useMemo(() => encodeLesson(text), [text]);
  const link = encoded.ok ? `${location.origin}${workshopPath}#${encoded.value}` : '';
  const qr = useMemo(() => (link === '' ? undefined : qrPicture(link)), [link]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setTold('Copied.');
    } catch {
      setTold('This browser does not let the page copy. Mark the link and copy it yourself.');
    }
  };
  return (
    <Dialog
      open
      onClose={onClose}
      title="Pass this lesson on"
      actions={
        encoded.ok && (
          <Button kind="primary" icon="link" onClick={() => void copy()}>
            Copy
          </Button>
        )
      }
    >
      <div className={styles.passOn}>
        {encoded.ok ? (
          <>
            <p>The whole lesson is in the link itself; nothing is sent anywhere until you send it. Whoever opens it can try it, keep it and change it.</p>
            <Field label="Link" value={link} readOnly onFocus={(event) => event.currentTarget.select()} />
            <p role="status">{told}</p>
            {qr?.ok ? (
              <svg viewBox={`0 0 ${qr.value.size} ${qr.value.size}`} role="img" aria-label={`QR code: ${title}`} className={styles.qr} shapeRendering="crispEdges">
                <rect width={qr.value.size} height={qr.value.size} fill="#fff" />
                <path d={qr.value.path} fill="#000" />
              </svg>
            ) : (
              <p>The link is too long for a code to photograph. Send the link, or export the lesson as a file.</p>
            )}
          </>
        ) : (
          <p role="alert">
            {encoded.what} {encoded.mend}
          </p>
        )}
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
