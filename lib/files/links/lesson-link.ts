import { LONGEST_LESSON } from '../../lesson/lesson';
import { refused, accepted, type Parsed } from '../../quantity/parsed';
import { packText, unpackText } from './packed-text';

/** A lesson behind the # of a link: `lesson-1.` and its text, packed. The number is the version of the format. */
const MARK = 'lesson-1.';

/** Packs a lesson's text for a link; refused where it is too long for one. */
export function encodeLesson(text: string): Parsed<string> {
  const packed = text.length > LONGEST_LESSON ? undefined : packText(text);
  return packed === undefined
    ? refused('This lesson is too long for a link.', 'Export it as a file and send that instead.')
    : accepted(`${MARK}${packed}`);
}

/** Whether the part of an address after the # is meant to carry a lesson. */
export function isLessonLink(fragment: string): boolean {
  return /^#?lesson-\d/.test(fragment);
}

const AGAIN = 'Ask for the link again, and copy the whole of it.';

/** The lesson's text that a link carries. What it says is not checked here. Never throws. */
export function decodeLesson(fragment: string): Parsed<string> {
  const text = fragment.replace(/^#/, '').trim();
  if (!text.startsWith(MARK)) {
    return isLessonLink(text)
      ? refused(
          'This link was made by a newer version.',
          'Reload this page to get the newest one, and open the link again.',
        )
      : refused('This is not a link to a lesson.', AGAIN);
  }
  const unpacked = unpackText(text.slice(MARK.length));
  if (!unpacked.ok)
    return refused(
      unpacked.damage === 'changed'
        ? 'The link was changed or cut on the way: its checksum does not fit.'
        : 'The link is cut off, or is none that is made here.',
      AGAIN,
    );
  if (unpacked.text.length > LONGEST_LESSON)
    return refused(
      `The lesson in this link has ${unpacked.text.length} characters; ${LONGEST_LESSON} are read.`,
      'Ask for a shorter one.',
    );
  return accepted(unpacked.text);
}
