'use client';

import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { diveTitle } from '../../pictures/dive-title';
import { useDeskStore } from '../desk-context';

/** Saves the readings of every sample, with all sixteen compartments, for a spreadsheet. */
export function SaveReadings() {
  const store = useDeskStore();
  const save = async () => {
    const { script, scene } = store.getState();
    const { say } = useStatus.getState();
    try {
      const [{ writeReadingsCsv }, { fileWords, saveFile }] = await Promise.all([
        import('@/lib/files/csv/write-csv'),
        import('../../parts/save-file'),
      ]);
      const title = diveTitle(script, scene, usePreferences.getState().units);
      const name = `halftime-${fileWords(title)}-readings.csv`;
      saveFile(name, writeReadingsCsv(scene.timeline, scene.figures), 'text/csv');
      say(`Saved ${name}, with the caution in it.`);
    } catch {
      say('The table could not be made; you may be offline. Try again once the page has been fetched whole.');
    }
  };
  return (
    <Button kind="quiet" icon="table" onClick={() => void save()}>
      Save the readings as CSV
    </Button>
  );
}
