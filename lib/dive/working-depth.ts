import { DEEPEST_M } from './bounds';
import { parseDepth } from '../quantity/depth';
import { quoted, refused, type Parsed } from '../quantity/parsed';

/** Reads a depth that the model reaches; m. */
export function parseWorkingDepth(text: string): Parsed<number> {
  const read = parseDepth(text);
  if (read.ok && read.value > DEEPEST_M)
    return refused(`${quoted(text)} is deeper than this model goes.`, `Write at most ${DEEPEST_M} m.`);
  return read;
}
