'use client';

import { useRef, useState } from 'react';
import { Button } from '../../parts/Button';
import { fetchedLater } from '../../parts/fetched-later';
import { Icon } from '../../parts/Icon';
import { IconButton } from '../../parts/IconButton';
import { useStatus } from '../../parts/status';
import { TourOffer } from '../tour/TourOffer';
import type { KeptDesk } from './use-kept-desk';
import styles from './keep.module.css';

// Asked for seldom, and the desk opens sooner without them.
const SavedDivesPanel = fetchedLater(async () => (await import('./dialogs')).SavedDivesPanel);
const PassOnDialog = fetchedLater(async () => (await import('./dialogs')).PassOnDialog);
const PrintDialog = fetchedLater(async () => (await import('./dialogs')).PrintDialog);
const Tour = fetchedLater(async () => (await import('../tour/Tour')).Tour);

const KEPT: Record<KeptDesk['kept'], string> = {
  opening: 'Looking for your last dive…',
  kept: 'Kept on this machine as you work',
  full: 'Not kept: no room left in this browser',
  blocked: 'Not kept: this browser lets pages keep nothing',
};

type Opened = 'saved' | 'pass on' | 'print' | undefined;

/** Above the desk: saving, passing on, printing, presenting, and whether the work is kept. */
export function DeskBar({ kept, notice, putAway, onPresent }: KeptDesk & { onPresent: () => void }) {
  const [opened, open] = useState<Opened>();
  const close = () => open(undefined);
  const [touring, tour] = useState(false);
  const bar = useRef<HTMLDivElement>(null);
  const toTourButton = () => bar.current?.querySelector<HTMLElement>('[data-way="tour"]')?.focus();
  return (
    <>
      <div ref={bar} className={`${styles.bar} unprinted`} role="group" aria-label="This desk">
        <p className={styles.kept} data-kept={kept}>
          {(kept === 'full' || kept === 'blocked') && <Icon name="caution" />}
          {KEPT[kept]}
        </p>
        <TourOffer
          onShow={() => tour(true)}
          onRefused={() => {
            toTourButton();
            useStatus.getState().say('The tour stays here, under “Tour”.');
          }}
        />
        <Button kind="quiet" icon="why" data-way="tour" onClick={() => tour(true)}>
          Tour
        </Button>
        <Button
          kind="quiet"
          icon="save"
          aria-expanded={opened === 'saved'}
          onClick={() => open(opened === 'saved' ? undefined : 'saved')}
        >
          Saved dives
        </Button>
        <Button kind="quiet" icon="link" onClick={() => open('pass on')}>
          Pass on
        </Button>
        <Button kind="quiet" icon="print" onClick={() => open('print')}>
          Print
        </Button>
        <Button kind="quiet" icon="screen" data-way="present" onClick={onPresent}>
          Present
        </Button>
      </div>
      {touring && (
        <Tour
          onEnd={() => {
            tour(false);
            toTourButton();
          }}
        />
      )}
      {notice !== undefined && (
        <div className={`${styles.notice} unprinted`} role="alert">
          <p>{notice}</p>
          <IconButton icon="close" label="Put this notice away" onClick={putAway} />
        </div>
      )}
      {opened === 'saved' && <SavedDivesPanel onClose={close} />}
      {opened === 'pass on' && <PassOnDialog onClose={close} />}
      {opened === 'print' && <PrintDialog onClose={close} />}
    </>
  );
}
