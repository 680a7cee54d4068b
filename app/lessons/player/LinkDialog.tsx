'use client';

import { useMemo } from 'react';
import { cautions } from '@/content/cautions';
import { qrPicture } from '@/lib/files/links/qr';
import { Dialog } from '../../parts/Dialog';
import { LinkBox } from '../../parts/LinkBox';
import { QrFigure } from '../../parts/QrFigure';
import styles from './player.module.css';

interface LinkDialogProps {
  link: string;
  title: string;
  onClose: () => void;
}

/** A link to copy, and the same as a code to photograph. */
export function LinkDialog({ link, title, onClose }: LinkDialogProps) {
  const qr = useMemo(() => qrPicture(link), [link]);
  return (
    <Dialog open onClose={onClose} title="Link to this step">
      <div className={styles.linkDialog}>
        <p>Whoever opens it stands at “{title}”. It carries no answers of yours.</p>
        <LinkBox link={link} />
        {qr.ok && <QrFigure qr={qr.value} />}
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
