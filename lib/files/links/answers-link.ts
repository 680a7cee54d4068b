import { refused, accepted, type Parsed } from '../../quantity/parsed';
import { DAMAGED, packText, unpackText } from './packed-text';

/** Answers to lessons behind the # of a link: `answers-1.` and their text, packed. The number is the version of the format. */
const MARK = 'answers-1.';

/** Packs answers for a link; refused where they are too long for one. */
export function encodeAnswers(text: string): Parsed<string> {
  const packed = packText(text);
  return packed === undefined
    ? refused('These answers are too long for a link.', 'Hand them in as a file instead.')
    : accepted(`${MARK}${packed}`);
}

/** The text of the answers that a link, or the part of one after its #, carries. Never throws. */
export function decodeAnswers(link: string): Parsed<string> {
  const fragment = link.trim().replace(/^[^#]*#/, '');
  if (!fragment.startsWith(MARK))
    return /^answers-\d/.test(fragment)
      ? refused('This link was made by a newer version.', 'Reload this page to get the newest one, and try again.')
      : refused('This is not a link to answers.', DAMAGED);
  const unpacked = unpackText(fragment.slice(MARK.length));
  if (unpacked.ok) return accepted(unpacked.text);
  return refused(
    unpacked.damage === 'changed'
      ? 'The link was changed or cut on the way: its checksum does not fit.'
      : 'The link is cut off, or is none that is made here.',
    DAMAGED,
  );
}
