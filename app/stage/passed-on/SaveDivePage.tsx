'use client';

import { Button } from '../../parts/Button';
import { PAGE_UNFETCHED } from '../../parts/alone/save-page';
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
      say(PAGE_UNFETCHED);
    }
  };
  return (
    <Button kind="quiet" icon="save" onClick={() => void save()}>
      Save the dive as a page of its own
    </Button>
  );
}
