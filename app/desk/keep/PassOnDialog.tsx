'use client';

import { useId, useState } from 'react';
import { cautions } from '@/content/cautions';
import { qrPicture, type QrPicture } from '@/lib/files/links/qr';
import { encodeState, LINK_LEAVES_OUT, type Encoded } from '@/lib/files/links/share-link';
import type { Parsed } from '@/lib/quantity/parsed';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { LinkBox } from '../../parts/LinkBox';
import { escapedText } from '@/lib/files/links/dive-page';
import { embedPath } from '../../parts/routes';
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
        {encoded.ok && <InCoursePage title={title} fragment={encoded.fragment} />}
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

/** Room for the dive and the chase beside each other, with readings and time, on a course page that is wide. */
const FRAME_HEIGHT_PX = 930;

/**
 * No higher than the window, so that readings, picture and the hand on time are seen together on a phone; and never so
 * low that nothing is, where a course puts its page into a frame of its own whose height is yet to be found.
 */
const FRAME_STYLE = `border:0;height:clamp(560px,92vh,${FRAME_HEIGHT_PX}px)`;

/** The line that shows the dive in a frame of another page. */
function InCoursePage({ title, fragment }: { title: string; fragment: string }) {
  const id = useId();
  const address = `${location.origin}${embedPath}#${fragment}`;
  const line = `<iframe src="${address}" title="${escapedText(title)}" width="100%" height="${FRAME_HEIGHT_PX}" style="${FRAME_STYLE}" loading="lazy"></iframe>`;
  return (
    <div className={styles.asFiles}>
      <h3>In a course page</h3>
      <LinkBox link={line} label="Line for a frame" describedBy={id} />
      <p id={id}>
        Put where a course page takes HTML, this line shows the dive to be played there, as wide as the page and no
        higher than the window. It keeps nothing and asks for nothing but itself. Whether a frame may be shown, the
        course’s page decides; where it may not, give the link.
      </p>
    </div>
  );
}
