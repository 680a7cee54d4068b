'use client';

import { Button } from '../../parts/Button';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../desk-context';

/** Saves the dive with its pictures, its readings and time as one file that opens by itself. */
export function SaveDivePage() {
  const store = useDeskStore();
  const save = async () => {
    const { say } = useStatus.getState();
    try {
      const { saveDivePage } = await import('./dive-page-file');
      say(await saveDivePage(store.getState()));
    } catch {
      say('The page could not be made; you may be offline. Try again once the site has been fetched whole.');
    }
  };
  return (
    <Button kind="quiet" icon="save" onClick={() => void save()}>
      Save the dive as a page of its own
    </Button>
  );
}
