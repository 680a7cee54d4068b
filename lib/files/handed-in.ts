import { NOTHING_YET, type LessonProgress, type Progress } from '../lesson/progress';
import { readProgress } from '../lesson/read-progress';
import { refused, accepted, type Parsed } from '../quantity/parsed';
import { crc32 } from './links/crc32';

/** What a learner hands in: answers to one or all lessons, first and later ones, and a name only where one was typed. */
export interface HandedIn {
  readonly name: string;
  readonly lessons: Readonly<Record<string, LessonProgress>>;
}

const FORMAT = 'halftime-answers';
const VERSION = 1;
const LONGEST_NAME = 80;
/** The longest paper that is read, characters. */
const LONGEST_PAPER = 2_000_000;

/** A learner's answers as text; of one lesson, or of all that were begun. What is half given is left out. */
export function writeHandedIn({ lessons }: Progress, name: string, only?: string): string {
  const own = Object.entries(lessons)
    .filter(([slug]) => only === undefined || slug === only)
    .map(([slug, { predictions, tries, checks, seen }]) => [slug, { seen, predictions, tries, checks }]);
  const answers = JSON.stringify(
    Object.fromEntries(own),
    // A curve to a thousandth of its unit is as sharp as any hand.
    (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1000) / 1000 : value),
  );
  return JSON.stringify({
    format: FORMAT,
    version: VERSION,
    name: name.trim().slice(0, LONGEST_NAME),
    checksum: checksumOf(answers),
    lessons: JSON.parse(answers) as unknown,
  });
}

/**
 * Of the answers alone, so that a name may be taken out. It notices what was changed or moved by accident or by hand; it is
 * no seal, for whoever knows how can make it anew.
 */
function checksumOf(answers: string): string {
  return crc32(new TextEncoder().encode(answers)).toString(16).padStart(8, '0');
}

const ASK_AGAIN = 'Ask for the file or the link again.';

/**
 * Reads what was handed in. Never throws; an answer that makes no sense loses no other. Papers from before there was a
 * checksum are read without one.
 */
export function readHandedIn(text: string): Parsed<HandedIn> {
  if (text.length > LONGEST_PAPER)
    return refused('This is too long for answers to lessons.', 'Choose the file that was saved with “Hand in”.');
  let record: { format?: unknown; version?: unknown; name?: unknown; checksum?: unknown; lessons?: unknown };
  try {
    record = (JSON.parse(text) ?? {}) as typeof record;
  } catch {
    return refused('This holds no answers to lessons, or only part of them.', ASK_AGAIN);
  }
  if (record.format !== FORMAT) return refused('This holds no answers to lessons.', ASK_AGAIN);
  if (record.version !== VERSION)
    return refused(
      'These answers were handed in from a newer version.',
      'Reload this page to get the newest one, and open them again.',
    );
  if (record.checksum !== undefined && record.checksum !== checksumOf(JSON.stringify(record.lessons) ?? ''))
    return refused('These answers were changed after they were handed in: their checksum does not fit.', ASK_AGAIN);
  const { lessons } = readProgress(record);
  if (Object.keys(lessons).length === 0) return refused('No lesson was answered in it.', ASK_AGAIN);
  const name = typeof record.name === 'string' ? record.name.slice(0, LONGEST_NAME) : '';
  return accepted({ name, lessons });
}

/** What somebody did in one lesson, as far as it was handed in. */
export function handedInOf({ lessons }: HandedIn, slug: string): LessonProgress {
  return (Object.hasOwn(lessons, slug) ? lessons[slug] : undefined) ?? NOTHING_YET;
}
