'use client';

import { useMemo } from 'react';
import { cautions } from '@/content/cautions';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { qrPicture } from '@/lib/files/links/qr';
import { Dialog } from '../../parts/Dialog';
import { LinkBox } from '../../parts/LinkBox';
import { QrFigure } from '../../parts/QrFigure';
import { workshopPath } from '../../parts/lesson-paths';
import styles from './workshop.module.css';

/** The lesson in a link and, where it is short enough, as a code to photograph. */
export function PassOnLesson({ text, onClose }: { text: string; onClose: () => void }) {
  const encoded = useMemo(() => encodeLesson(text), [text]);
  const link = encoded.ok ? `${location.origin}${workshopPath}#${encoded.value}` : '';
  const qr = useMemo(() => (link === '' ? undefined : qrPicture(link)), [link]);
  return (
    <Dialog open onClose={onClose} title="Pass this lesson on">
      <div className={styles.passOn}>
        {encoded.ok ? (
          <>
            <p>
              The whole lesson is in the link itself; nothing is sent anywhere until you send it. Whoever opens it can
              try it, keep it and change it.
            </p>
            <LinkBox link={link} />
            {qr?.ok ? (
              <QrFigure qr={qr.value} />
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
