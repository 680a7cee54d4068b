import { writeDivePage } from '@/lib/files/links/dive-page';
import { encodeState } from '@/lib/files/links/share-link';
import { usePreferences } from '../../parts/preferences';
import { embedPath } from '../../parts/routes';
import { fileWords, saveFile } from '../../parts/save-file';
import { diveTitle } from '../../pictures/dive-title';
import type { DeskState } from '../desk-store';
import { viewOf } from '../desk-view';

/** Saves the desk as one page that needs nothing else. Says what it saved, or what is wrong and how to mend it. */
export async function saveDivePage(state: DeskState): Promise<string> {
  const { units, theme } = usePreferences.getState();
  const { script } = state;
  const title = diveTitle(script, state.scene, units);
  const encoded = encodeState({ script, title, view: { ...viewOf(state), run: undefined } });
  if (!encoded.ok) return 'This dive is too long for a page of its own. Take out remarks or steps, and save it again.';
  const answer = await fetch(embedPath);
  if (!answer.ok) throw new Error(`The page of a dive could not be fetched: ${answer.status}.`);
  const page = writeDivePage(await answer.text(), { title, fragment: encoded.fragment, script, units, theme });
  const name = `halftime-${fileWords(title)}.html`;
  saveFile(name, page, 'text/html');
  return `Saved ${name}, with the caution on it. It opens in any browser, without a network.`;
}
