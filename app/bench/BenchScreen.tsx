'use client';

import { useEffect, useState } from 'react';
import { Button } from '../parts/Button';
import { useUndoKeys } from '../keep/use-undo-keys';
import { Caution } from '../parts/Caution';
import { replayEarlyPresses } from '../parts/early-presses';
import { fetchedLater } from '../parts/fetched-later';
import { BenchContext, useBench } from './bench-context';
import { createBenchStore } from './bench-store';
import { RunForm } from './RunForm';
import styles from './bench.module.css';

const AboutForm = fetchedLater(async () => (await import('./after-opening')).AboutForm);
const ChamberForm = fetchedLater(async () => (await import('./after-opening')).ChamberForm);
const UnitsForm = fetchedLater(async () => (await import('./after-opening')).UnitsForm);
const FilledIn = fetchedLater(async () => (await import('./after-opening')).FilledIn);
const KeptSheets = fetchedLater(async () => (await import('./after-opening')).KeptSheets);

/** A sheet for a pressure-chamber run: scripted, printed or run live, filled in, judged by what its user states. */
export function BenchScreen() {
  const [store] = useState(createBenchStore);
  useEffect(() => store.getState().open(), [store]);
  useEffect(replayEarlyPresses, []);
  return (
    <BenchContext value={store}>
      <Bench />
    </BenchContext>
  );
}

function Bench() {
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
      <RunForm />
      <AboutForm />
      <ChamberForm />
      <UnitsForm />
      <FilledIn />
      <KeptSheets />
    </div>
  );
}
