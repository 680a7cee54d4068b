import { encodeState } from '@/lib/files/links/share-link';
import { savePage } from '../../parts/alone/save-page';
import { usePreferences } from '../../parts/preferences';
import { diveTitle } from '../../pictures/dive-title';
import type { DeskState } from '../desk-state';
import { viewOf } from '../desk-view';

/** Saves the desk as one page that needs nothing else. Says what it saved, or what is wrong and how to mend it. */
export async function saveDivePage(state: DeskState): Promise<string> {
  const { units } = usePreferences.getState();
  const { script } = state;
  const title = diveTitle(script, state.scene, units);
  const encoded = encodeState({ script, title, view: { ...viewOf(state), run: undefined } });
  if (!encoded.ok) return 'This dive is too long for a page of its own. Take out remarks or steps, and save it again.';
  return savePage({ title, fragment: encoded.fragment, words: script });
}
