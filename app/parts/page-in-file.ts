import { LONGEST_PAGE, readDivePage } from '@/lib/files/links/dive-page';

/** What a link to the dive in a file would carry behind its #; undefined where the file is no dive saved as a page of its own. */
export async function divePageIn(file: Blob): Promise<string | undefined> {
  return file.size > LONGEST_PAGE ? undefined : readDivePage(await file.text());
}
