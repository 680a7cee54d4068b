import { LONGEST_LESSON } from '../../lesson/lesson';
import { refused, accepted, type Parsed } from '../../quantity/parsed';
import { DAMAGED, packText, unpackText } from './packed-text';

/** A lesson behind the # of a link: `lesson-1.` and its text, packed. The number is the version of the format. */
const MARK = 'lesson-1.';

/** The same of a lesson made from one of the shelf: `lesson-2.`, that one's name, and what is not in its text. */
const NEAR_MARK = /^#?lesson-2\.([a-z0-9-]{1,80})\./;

/** A lesson of the shelf that another was made from. */
interface NearLesson {
  readonly slug: string;
  readonly text: string;
}

/** Packs a lesson's text for a link; refused where it is too long for one. What it shares with `near` is not sent along. */
export function encodeLesson(text: string, near?: NearLesson): Parsed<string> {
  const packed = text.length > LONGEST_LESSON ? undefined : packText(text, near?.text);
  return packed === undefined
    ? refused('This lesson is too long for a link.', 'Export it as a file and send that instead.')
    : accepted(`${near ? `lesson-2.${near.slug}.` : MARK}${packed}`);
}

/** The lesson of the shelf that a link leans on, by name: its text is needed to read the link. */
export function nearLessonOf(fragment: string): string | undefined {
  return NEAR_MARK.exec(fragment.trim())?.[1];
}

/** Whether the part of an address after the # is meant to carry a lesson. */
export function isLessonLink(fragment: string): boolean {
  return /^#?lesson-\d/.test(fragment);
}

/** The lesson's text that a link carries; `near` is the text of the lesson it leans on. What it says is not checked here. Never throws. */
export function decodeLesson(fragment: string, near?: string): Parsed<string> {
  const text = fragment.replace(/^#/, '').trim();
  const slug = nearLessonOf(text);
  if (slug !== undefined && near === undefined)
    return refused(
      'This link leans on a lesson of this site, which could not be fetched.',
      'Open it where the site can be reached, or ask for the lesson as a file.',
    );
  if (slug === undefined && !text.startsWith(MARK)) {
    return isLessonLink(text)
      ? refused(
          'This link was made by a newer version.',
          'Reload this page to get the newest one, and open the link again.',
        )
      : refused('This is not a link to a lesson.', DAMAGED);
  }
  const unpacked =
    slug === undefined ? unpackText(text.slice(MARK.length)) : unpackText(text.replace(NEAR_MARK, ''), near);
  if (!unpacked.ok)
    return refused(
      unpacked.damage === 'changed'
        ? slug === undefined
          ? 'The link was changed or cut on the way: its checksum does not fit.'
          : 'The link was changed or cut on the way, or this site has another version of the lesson it was made from.'
        : 'The link is cut off, or is none that is made here.',
      slug === undefined ? DAMAGED : 'Ask for the lesson as a file.',
    );
  if (unpacked.text.length > LONGEST_LESSON)
    return refused(
      `The lesson in this link has ${unpacked.text.length} characters; ${LONGEST_LESSON} are read.`,
      'Ask for a shorter one.',
    );
  return accepted(unpacked.text);
}
