import { LONGEST_S } from '@/lib/dive/bounds';
import { sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { plainText } from '@/lib/quantity/number';
import { accepted, quoted, refused, type Parsed } from '@/lib/quantity/parsed';
import { parseTime } from '@/lib/quantity/time';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { parseWorkingDepth } from '@/lib/dive/working-depth';
import type { BeforeDive } from './curve-wish';

const EXAMPLE = 'Write a depth, a time there and how long ago, such as 30 m, 20 min, 1 h ago; or none.';

/** Reads the dive before: `30 m, 20 min, 1 h ago`, or `none`. */
export function parseBefore(text: string): Parsed<BeforeDive | undefined> {
  const plain = plainText(text).trim();
  if (plain === 'none') return accepted(undefined);
  const parts = plain.split(/(?<!\d),|,(?!\d)/).map((part) => part.trim());
  const [depthText, stayText, agoText] = parts;
  if (parts.length !== 3 || !agoText?.endsWith('ago'))
    return refused(`${quoted(text)} does not say what was dived and when.`, EXAMPLE);
  const depth = parseWorkingDepth(depthText!);
  if (!depth.ok) return { ok: false, what: depth.what, mend: depth.mend };
  if (depth.value === 0) return refused('A dive of no depth is none.', EXAMPLE);
  const stay = parseTime(stayText!);
  if (!stay.ok) return { ok: false, what: stay.what, mend: stay.mend };
  const ago = parseTime(agoText.slice(0, -'ago'.length));
  if (!ago.ok) return { ok: false, what: ago.what, mend: ago.mend };
  if (stay.value === 0 || stay.value + ago.value > LONGEST_S)
    return refused(`${quoted(text)} is no time or more than the week this model follows.`, EXAMPLE);
  return accepted({ depthM: depth.value, stayS: stay.value, surfaceS: ago.value });
}

export function writeBefore(before: BeforeDive | undefined, units: UnitSystem): string {
  return before
    ? `${sayDepth(before.depthM, units)}, ${writeTime(before.stayS)}, ${writeTime(before.surfaceS)} ago`
    : 'none';
}
