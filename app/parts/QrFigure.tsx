import type { ReactNode } from 'react';
import type { QrPicture } from '@/lib/files/links/qr';
import styles from './QrFigure.module.css';

/** A link as a code to photograph, with what it opens under it. */
export function QrFigure({ qr: { size, path, caption }, children }: { qr: QrPicture; children?: ReactNode }) {
  return (
    <figure className={styles.figure} aria-label="The link as a QR code">
      {/* Dark on light in either theme: many cameras read it no other way. */}
      <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label="QR code of the link" shapeRendering="crispEdges">
        <rect width={size} height={size} fill="#fff" />
        <path d={path} fill="#000" />
      </svg>
      <figcaption>
        <p>For a class to photograph from the screen.</p>
        <p>{caption}</p>
        {children}
      </figcaption>
    </figure>
  );
}
