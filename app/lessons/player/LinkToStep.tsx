'use client';

import { useEffect, useState } from 'react';
import { cautions } from '@/content/cautions';
import type { QrPicture } from '@/lib/files/qr';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import { lessonPath } from '../paths';
import type { PreparedLesson, PreparedStep } from '../prepared';
import styles from './player.module.css';

/** A link, and a code to photograph, that opens the lesson at this step. */
export function LinkToStep({ lesson, step }: { lesson: PreparedLesson; step: PreparedStep }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button kind="quiet" icon="link" onClick={() => setOpen(true)}>
        Link to this step
      </Button>
      {open && <LinkDialog link={`${location.origin}${lessonPath(lesson.slug, step.id)}`} title={`${lesson.title}: ${step.title}`} onClose={() => setOpen(false)} />}
    </>
  );
}

function LinkDialog({ link, title, onClose }: { link: string; title: string; onClose: () => void }) {
  const [qr, setQr] = useState<QrPicture>();
  const [told, setTold] = useState('');
  useEffect(() => {
    let here = true;
    void import('@/lib/files/qr').then(({ qrPicture }) => {
      const made = qrPicture(link);
      if (here && made.ok) setQr(made.value);
    });
    return () => {
      here = false;
    };
  }, [link]);
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
      title="Link to this step"
      actions={
        <Button kind="primary" icon="link" onClick={() => void copy()}>
          Copy
        </Button>
      }
    >
      <div className={styles.linkDialog}>
        <p>Whoever opens it stands at this step. It carries no answers of yours.</p>
        <Field label="Link" value={link} readOnly onFocus={(event) => event.currentTarget.select()} />
        <p role="status">{told}</p>
        {qr && (
          <figure>
            <svg viewBox={`0 0 ${qr.size} ${qr.size}`} role="img" aria-label={`QR code: ${title}`} className={styles.qr} shapeRendering="crispEdges">
              <rect width={qr.size} height={qr.size} fill="#fff" />
              <path d={qr.path} fill="#000" />
            </svg>
            <figcaption>{title}</figcaption>
          </figure>
        )}
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
