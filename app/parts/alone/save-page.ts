import { writeDivePage } from '@/lib/files/links/dive-page';
import { usePreferences } from '../preferences';
import { embedPath } from '../routes';
import { fileWords, saveFile } from '../save-file';

interface ToSave {
  readonly title: string;
  /** What the page carries, as a link has it behind its #. */
  readonly fragment: string;
  /** The same in words, to be read where no script of the page runs. */
  readonly words: string;
}

/** Saves a page that needs nothing else. Says what it saved; rejects where the page can't be fetched. */
export async function savePage({ title, fragment, words }: ToSave): Promise<string> {
  const { units, theme } = usePreferences.getState();
  const answer = await fetch(embedPath);
  if (!answer.ok) throw new Error(`The page could not be fetched: ${answer.status}.`);
  const page = writeDivePage(await answer.text(), { title, fragment, script: words, units, theme });
  const name = `halftime-${fileWords(title)}.html`;
  saveFile(name, page, 'text/html');
  return `Saved ${name}, with the caution on it. It opens in any browser, without a network.`;
}

export const PAGE_UNFETCHED =
  'The page could not be made; you may be offline. Try again once the site has been fetched whole.';
