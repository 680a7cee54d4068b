'use client';

import { useMemo } from 'react';
import { qrPicture } from '@/lib/files/links/qr';
import { LinkBox } from './LinkBox';
import { QrFigure } from './QrFigure';

/** Longer links make a code too fine for a camera to read from a phone's screen; common practice, no source. */
const LONGEST_FOR_CODE = 1200;

/** A link to copy and, where it is short enough to be photographed, as a code; otherwise why not, and what to do. */
export function LinkWithCode({ link, instead }: { link: string; instead: string }) {
  const qr = useMemo(() => (link.length > LONGEST_FOR_CODE ? undefined : qrPicture(link)), [link]);
  return (
    <>
      <LinkBox link={link} />
      {qr?.ok ? (
        <QrFigure qr={qr.value} />
      ) : (
        <p>
          A code of this link would be too fine to photograph: it has {link.length} characters, and up to{' '}
          {LONGEST_FOR_CODE} can be read from a phone. {instead}
        </p>
      )}
    </>
  );
}
