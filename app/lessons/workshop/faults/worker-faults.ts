import type { LessonFault } from '@/lib/lesson/checking/fault';

/** A lesson that keeps the checker busy longer than this was made to, ms. */
export const LONGEST_CHECK_MS = 20_000;

export const TOO_SLOW: LessonFault = {
  line: 1,
  path: [],
  what: 'This lesson takes too long to work out.',
  mend: 'Shorten its dives, or ask for less in its questions.',
};
/** Where a worker can't be had. */
export const UNFETCHED: LessonFault = {
  line: 1,
  path: [],
  what: 'What works a lesson out could not be fetched; you may be offline.',
  mend: 'Nothing is lost: change the text or load the page again once you are back.',
};
