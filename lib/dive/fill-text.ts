import { parsePressure } from '../quantity/pressure';
import { quoted, refused, type Parsed } from '../quantity/parsed';
import { FILL_RANGE_BAR } from './bounds';

/** Reads what a cylinder's gauge shows; bar, no more than any is filled to. */
export function parseGauge(text: string): Parsed<number> {
  const read = parsePressure(text);
  return read.ok && read.value > FILL_RANGE_BAR[1]
    ? refused(`${quoted(text)} is more than any cylinder is filled to.`, `Write at most ${FILL_RANGE_BAR[1]} bar.`)
    : read;
}
