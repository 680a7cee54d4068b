'use client';

import { IconButton } from '../parts/IconButton';
import { useDesk } from '../stage/desk-context';

/** Takes back the last change of the desk, and does it again. */
export function UndoButtons() {
  const undo = useDesk((state) => state.undo);
  const redo = useDesk((state) => state.redo);
  const canUndo = useDesk((state) => state.past.length > 0);
  const canRedo = useDesk((state) => state.future.length > 0);
  return (
    <>
      <IconButton icon="undo" label="Undo" onClick={undo} disabled={!canUndo} />
      <IconButton icon="redo" label="Redo" onClick={redo} disabled={!canRedo} />
    </>
  );
}
