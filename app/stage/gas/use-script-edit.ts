import { setSetting } from '@/lib/dive/edit/edit-settings';
import { useDeskStore } from '../desk-context';

/** Edits of the desk's script, each one step to undo. */
export function useScriptEdit() {
  const store = useDeskStore();
  const edit = (make: (script: string) => string) => store.getState().change({ script: make(store.getState().script) });
  return { edit, set: (name: string, value: string | undefined) => edit((script) => setSetting(script, name, value)) };
}
