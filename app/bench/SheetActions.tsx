'use client';

import { readyRunOf } from '@/content/bench/runs';
import { chamberDive } from '@/lib/bench/chamber-dive';
import type { ChamberRun } from '@/lib/bench/chamber-run';
import { tookOf } from '@/lib/bench/live-run';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { toFirstFault } from '../parts/first-fault';
import { leaveForDesk } from '../parts/hand-over';
import { saveFile } from '../parts/save-file';
import { Button } from '../parts/Button';
import { routes } from '../parts/routes';
import { useStatus } from '../parts/status';
import { useBench } from './bench-context';
import styles from './bench.module.css';

/** The sheet printed, saved as a file, cleared; the run on the desk. */
export function SheetActions({ run, sheets }: { run: ChamberRun; sheets: readonly UnitSheet[] }) {
  const script = useBench((state) => state.script);
  const settings = useBench((state) => state.settings);
  const about = useBench((state) => state.about);
  const marks = useBench((state) => state.marks);
  const change = useBench((state) => state.change);
  const undo = useBench((state) => state.undo);
  const say = useStatus((status) => status.say);
  const title = readyRunOf(script)?.title ?? 'A chamber run';
  const readings = useBench((state) => state.readings);
  const sheet = useBench((state) => state.sheetNow);
  const empty = Object.values(readings).every((own) => Object.keys(own).length === 0);
  // A sheet with a box that could not be read would be short of it.
  const whole = (then: () => void) => () => {
    if (!toFirstFault()) then();
  };
  const keep = async () => {
    const { useKeptSheets } = await import('./kept-sheets');
    const { add, remove } = useKeptSheets.getState();
    const id = add(sheet(), sheets);
    change({ readings: {}, marks: [], about: { ...about, date: '', remarks: '' } });
    say('The sheet is kept, and a new one begun with the same run, chamber and units.', {
      label: 'Undo',
      run: () => {
        undo();
        remove(id);
      },
    });
  };
  const clear = () => {
    change({ readings: {}, marks: [] });
    say('The readings are cleared.', { label: 'Undo', run: undo });
  };
  const open = async () => {
    const { writeScript } = await import('@/lib/dive/script');
    const dive = chamberDive(run, settings, marks.length > 1 ? tookOf(run, marks) : []);
    const altitudeM = Math.round(dive.settings.altitudeM);
    const plain = writeScript({
      ...dive,
      settings: { ...dive.settings, altitudeM, start: { kind: 'adapted', altitudeM } },
    });
    if (leaveForDesk({ script: `# ${title}: what the units in the pot go through\n${plain}`, title }))
      location.assign(routes.desk.path);
    else say('This browser does not let a dive be passed to the desk.');
  };
  const unfetched = () => say('What does this could not be fetched; you may be offline. Try again.');
  const exportCsv = async () => {
    const { writeSheetCsv } = await import('@/lib/bench/write-sheet-csv');
    saveFile('bench-sheet.csv', writeSheetCsv(title, about, settings, sheets), 'text/csv');
  };
  return (
    <div className={`${styles.row} ${styles.unprinted}`}>
      <Button icon="print" onClick={whole(() => window.print())}>
        Print the sheet
      </Button>
      <Button icon="save" onClick={whole(() => void exportCsv().catch(unfetched))}>
        Export as CSV
      </Button>
      <Button icon="save" disabled={empty} onClick={whole(() => void keep().catch(unfetched))}>
        Keep it, and begin the next
      </Button>
      <Button onClick={() => void open().catch(unfetched)}>Watch this run on the desk</Button>
      <Button kind="quiet" onClick={clear}>
        Clear the readings
      </Button>
      <p className={styles.soft}>What you enter is kept in this browser as you go.</p>
    </div>
  );
}
