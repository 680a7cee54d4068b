'use client';

import { useEffect, useState } from 'react';
import { Button } from '../parts/Button';
import { useUndoKeys } from '../keep/use-undo-keys';
import { Caution } from '../parts/Caution';
import { fetchedLater } from '../parts/fetched-later';
import { BenchContext, useBench } from './bench-context';
import { createBenchStore } from './bench-store';
import { ChamberForm } from './ChamberForm';
import { RunForm } from './RunForm';
import { SheetTable } from './SheetTable';
import { useRun, useSheets } from './use-sheets';
import styles from './bench.module.css';

// Who and which units, a run on the clock, what comes of a sheet that is filled in, and sheets of other days.
const KeptSheets = fetchedLater(async () => (await import('./KeptSheets')).KeptSheets);
const UnitsForm = fetchedLater(async () => (await import('./UnitsForm')).UnitsForm);
const AboutForm = fetchedLater(async () => (await import('./AboutForm')).AboutForm);
const SheetActions = fetchedLater(async () => (await import('./SheetActions')).SheetActions);
const Verdicts = fetchedLater(async () => (await import('./Verdicts')).Verdicts);
const LivePanel = fetchedLater(async () => (await import('./LivePanel')).LivePanel);
const PrintedSheet = fetchedLater(async () => (await import('./PrintedSheet')).PrintedSheet);

/** A sheet for a pressure-chamber run: scripted, printed or run live, filled in, judged by what its user states. */
export function BenchScreen() {
  const [store] = useState(createBenchStore);
  useEffect(() => store.getState().open(), [store]);
  return (
    <BenchContext value={store}>
      <Bench />
    </BenchContext>
  );
}

function Bench() {
  const read = useRun();
  const sheets = useSheets(read);
  const undo = useBench((state) => state.undo);
  const redo = useBench((state) => state.redo);
  const settle = useBench((state) => state.settle);
  const redoable = useBench((state) => state.future.length > 0);
  const undoable = useBench((state) => state.past.length > 0);
  useUndoKeys(undo, redo);
  return (
    <div className={styles.bench} onBlur={settle}>
      <Caution about="chamber" />
      <div className={styles.unprinted}>
        <Button icon="undo" disabled={!undoable} onClick={undo}>
          Undo
        </Button>
        <Button icon="redo" disabled={!redoable} onClick={redo}>
          Redo
        </Button>
      </div>
      <RunForm read={read} />
      <AboutForm />
      <ChamberForm />
      <UnitsForm />
      {read.ok && (
        <>
          <LivePanel run={read.run} />
          <SheetTable run={read.run} sheets={sheets} />
          <Verdicts sheets={sheets} />
          <PrintedSheet run={read.run} sheets={sheets} />
          <SheetActions run={read.run} sheets={sheets} />
        </>
      )}
      <KeptSheets />
    </div>
  );
}
