import { refused, accepted, type Parsed } from '../../quantity/parsed';
import { stepPageSchema, type StepPage } from '../../lesson/step-page';
import { isStepLink } from './step-mark';
import { packText, unpackText } from './packed-text';

/** A question of a lesson behind the # of a page of its own: `step-1.` and its data as JSON, packed. The number is the version of the format. */
const MARK = 'step-1.';

/** Packs a question for a page of its own; refused where it is too long. */
export function encodeStep(page: StepPage): Parsed<string> {
  const packed = packText(JSON.stringify(page));
  return packed === undefined
    ? refused(
        'This question is too long for a page of its own.',
        'Shorten its texts, or take dives that it doesn’t need out of the lesson.',
      )
    : accepted(`${MARK}${packed}`);
}

const AGAIN = 'Ask for it again, or make it anew from the lesson.';

/** The question that a page carries, its shape checked; what it means is checked when it is made ready. Never throws. */
export function decodeStep(fragment: string): Parsed<StepPage> {
  const text = fragment.replace(/^#/, '').trim();
  if (!text.startsWith(MARK))
    return isStepLink(text)
      ? refused('This question was made by a newer version.', 'Reload the page to get the newest one.')
      : refused('This is no question of a lesson.', AGAIN);
  const unpacked = unpackText(text.slice(MARK.length));
  if (!unpacked.ok)
    return refused(
      'The question in this page is not as it was saved: it has been changed, or part of it is missing.',
      AGAIN,
    );
  try {
    const read = stepPageSchema.safeParse(JSON.parse(unpacked.text));
    if (read.success) return accepted(read.data);
  } catch {
    // Not JSON, or nested beyond what can be read.
  }
  return refused('What this page carries is no question of a lesson.', AGAIN);
}
