'use client';

import { useMemo, useState } from 'react';
import { cautions } from '@/content/cautions';
import { qrPicture } from '@/lib/files/qr';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import styles from './player.module.css';

interface LinkDialogProps {
  link: string;
  title: string;
  onClose: () => void;
}

/** A link to copy, and the same as a code to photograph. */
export function LinkDialog({ link, title, onClose }: LinkDialogProps) {
  const qr = useMemo(() => qrPicture(link), [link]);
  const [told, setTold] = useState('');
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
        {qr.ok && (
          <figure>
            <svg viewBox={`0 0 ${qr.value.size} ${qr.value.size}`} role="img" aria-label={`QR code: ${title}`} className={styles.qr} shapeRendering="crispEdges">
              <rect width={qr.value.size} height={qr.value.size} fill="#fff" />
              <path d={qr.value.path} fill="#000" />
            </svg>
            <figcaption>{title}</figcaption>
          </figure>
        )}
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
