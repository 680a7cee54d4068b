'use client';

import { useState } from 'react';
import { Button, ButtonLink } from '../parts/Button';
import { fetchedLater } from '../parts/fetched-later';
import { Icon } from '../parts/Icon';
import { IconButton } from '../parts/IconButton';
import { Menu } from '../parts/Menu';
import { Navigation } from '../parts/Navigation';
import { teachPath } from '../parts/lesson-paths';
import { PreferenceSwitches } from '../parts/PreferenceSwitches';
import { Wordmark } from '../parts/Wordmark';
import type { DrawerId } from './Drawer';
import type { KeptDesk } from './keep/use-kept-desk';
import { UndoButtons } from './UndoButtons';
import styles from './line.module.css';

// Asked for seldom, and the desk opens sooner without them.
const SavedDivesPanel = fetchedLater(async () => (await import('./keep/dialogs')).SavedDivesPanel);
const PassOnDialog = fetchedLater(async () => (await import('./keep/dialogs')).PassOnDialog);
const PrintDialog = fetchedLater(async () => (await import('./keep/dialogs')).PrintDialog);

const KEPT: Record<KeptDesk['kept'], string> = {
  opening: 'Looking for your last dive…',
  kept: 'Kept on this machine as you work',
  full: 'Not kept: no room left in this browser',
  blocked: 'Not kept: this browser lets pages keep nothing',
};

type Opened = 'saved' | 'pass on' | 'print';

interface DeskLineProps extends KeptDesk {
  drawer: DrawerId | 'none';
  onDrawer: (id: DrawerId) => void;
  onPresent: () => void;
  onTour: () => void;
}

/** The line at the top of the desk: the way to other screens, its tools, units and theme. What has no room folds into menus. */
export function DeskLine({ kept, notice, putAway, back, drawer, onDrawer, onPresent, onTour }: DeskLineProps) {
  const [opened, open] = useState<Opened>();
  const close = () => open(undefined);
  const tools = (
    <>
      <Button kind="quiet" icon="why" data-way="tour" data-done="" onClick={onTour}>
        Tour
      </Button>
      <Button
        kind="quiet"
        icon="save"
        data-done=""
        aria-expanded={opened === 'saved'}
        onClick={() => open(opened === 'saved' ? undefined : 'saved')}
      >
        Saved dives
      </Button>
      <Button kind="quiet" icon="link" data-done="" onClick={() => open('pass on')}>
        Pass on
      </Button>
      <Button kind="quiet" icon="print" data-done="" onClick={() => open('print')}>
        Print
      </Button>
      <ButtonLink kind="quiet" href={teachPath()}>
        Teach a class
      </ButtonLink>
    </>
  );
  const present = (
    <Button kind="quiet" icon="screen" data-way="present" data-done="" onClick={onPresent}>
      Present
    </Button>
  );
  return (
    <>
      <div className={styles.top}>
        <div className={styles.line} role="group" aria-label="This desk">
          <span className={styles.roomsFolded}>
            <Menu icon="rooms" label="Screens">
              <Navigation />
            </Menu>
          </span>
          <Wordmark />
          <span className={styles.roomsInLine}>
            <Navigation />
          </span>
          {back && <a href={back}>Back to the lesson</a>}
          <p className={styles.kept} data-kept={kept} title={KEPT[kept]}>
            {(kept === 'full' || kept === 'blocked') && <Icon name="caution" />}
            {KEPT[kept]}
          </p>
          <Button kind="quiet" aria-pressed={drawer === 'script'} onClick={() => onDrawer('script')}>
            Script
          </Button>
          <Button kind="quiet" aria-pressed={drawer === 'readings'} onClick={() => onDrawer('readings')}>
            Readings
          </Button>
          <span className={styles.undo}>
            <UndoButtons />
          </span>
          <span className={styles.toolsInLine}>{tools}</span>
          {present}
          <span className={styles.switchesInLine}>
            <PreferenceSwitches />
          </span>
          <span className={styles.toolsFolded}>
            <Menu icon="more" label="Tools of the desk">
              {tools}
              <span className={styles.undoFolded}>
                <UndoButtons />
              </span>
              <span className={styles.switchesFolded}>
                <PreferenceSwitches />
              </span>
            </Menu>
          </span>
        </div>
        {notice !== undefined && (
          <div className={styles.notice} role="alert">
            <p>{notice}</p>
            <IconButton icon="close" label="Put this notice away" onClick={putAway} />
          </div>
        )}
      </div>
      {opened === 'saved' && <SavedDivesPanel onClose={close} />}
      {opened === 'pass on' && <PassOnDialog onClose={close} />}
      {opened === 'print' && <PrintDialog onClose={close} />}
    </>
  );
}
