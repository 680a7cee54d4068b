'use client';

import { useId, useState } from 'react';
import { cautions } from '@/content/cautions';
import { qrPicture, type QrPicture } from '@/lib/files/links/qr';
import { encodeState, LINK_LEAVES_OUT, type Encoded } from '@/lib/files/links/share-link';
import type { Parsed } from '@/lib/quantity/parsed';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { LinkBox } from '../../parts/LinkBox';
import { FrameLine } from '../../parts/alone/FrameLine';
import { usePreferences } from '../../parts/preferences';
import { QrFigure } from '../../parts/QrFigure';
import { useDeskStore } from '../../stage/desk-context';
import { SaveDivePage } from '../../stage/passed-on/SaveDivePage';
import { SaveReadings } from '../../stage/figures/SaveReadings';
import { viewOf } from '../../stage/desk-view';
import { diveTitle } from '../../pictures/dive-title';
import { qrSvg } from './qr-svg';
import { fileWords, saveFile } from '../../parts/save-file';
import styles from './keep.module.css';

/** Beyond what any link leaves out. */
const DESK_LEAVES_OUT =
  'Undo, units and theme stay with you too, and so do what is chosen inside a picture and a dive that is still being steered.';

interface Made {
  title: string;
  encoded: Encoded;
  link: string;
  qr: Parsed<QrPicture> | undefined;
}

/** The desk as a link, as a code to photograph, and its readings as a table. */
export function PassOnDialog({ onClose }: { onClose: () => void }) {
  const id = useId();
  const store = useDeskStore();
  const [{ title, encoded, link, qr }] = useState((): Made => {
    const state = store.getState();
    const title = diveTitle(state.script, state.scene, usePreferences.getState().units);
    const encoded = encodeState({ script: state.script, title, view: { ...viewOf(state), run: undefined } });
    const link = encoded.ok ? `${location.origin}${location.pathname}#${encoded.fragment}` : '';
    return { title, encoded, link, qr: encoded.ok ? qrPicture(link) : undefined };
  });

  return (
    <Dialog open onClose={onClose} title="Pass this desk on">
      <div className={styles.passOn}>
        <p className={styles.caution}>{cautions.general}</p>
        {encoded.ok ? (
          <>
            <LinkBox link={link} describedBy={`${id}-leaves`} />
            <p id={`${id}-leaves`}>
              Whoever opens it finds this dive, these pictures, what is covered and this moment. {LINK_LEAVES_OUT}{' '}
              {DESK_LEAVES_OUT} Nothing is sent anywhere until you send it: the dive is in the link itself.
            </p>
          </>
        ) : (
          <p role="alert">
            {encoded.what} {encoded.mend}
          </p>
        )}
        {qr?.ok && (
          <QrFigure qr={qr.value}>
            <Button
              onClick={() => saveFile(`halftime-${fileWords(title)}-code.svg`, qrSvg(qr.value, title), 'image/svg+xml')}
            >
              Save the code as SVG
            </Button>
          </QrFigure>
        )}
        {qr && !qr.ok && (
          <p>
            {qr.what} {qr.mend}
          </p>
        )}
        {encoded.ok && (
          <div className={styles.asFiles}>
            <h3>In a course page</h3>
            <FrameLine title={title} fragment={encoded.fragment} shows="the dive to be played there" />
          </div>
        )}
        <div className={styles.asFiles}>
          <h3>As files</h3>
          <p>
            The readings of every sample, with all sixteen compartments, for a spreadsheet. Each picture has its own
            buttons under it.
          </p>
          <SaveReadings />
          <p>
            The dive with its pictures, its readings and time, as one page: it opens by itself from a stick, a mail or a
            course, without this site and without a network. Dropped on the desk or on “Bring a dive”, it opens as the
            desk it was.
          </p>
          <SaveDivePage />
        </div>
      </div>
    </Dialog>
  );
}
