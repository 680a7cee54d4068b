import { plainNumber, plainText, readNumber } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import type { Start } from '../../dive';
import { COMPARTMENTS } from '../../../tissue/coefficients';

// Numbers are told from words by their having no letters, which leaves a long line only one way to match.
const SHAPE = /^nitrogen([^a-z]+)bar(?:[^a-z]+helium([^a-z]+)bar)?$/;
const FORM = 'Write nitrogen, sixteen numbers and bar; then, if there is any, helium and sixteen more.';

/** Reads the tensions an earlier dive left: `nitrogen <sixteen numbers> bar, helium <sixteen numbers> bar`. */
export function readTissues(text: string): Parsed<Start> {
  const shape = SHAPE.exec(plainText(text).trim());
  if (!shape) return refused(`${quoted(text)} does not give the tensions.`, FORM);
  const nitrogenBar = readTensions(shape[1]!, 'nitrogen');
  if (!nitrogenBar.ok) return nitrogenBar;
  const heliumBar =
    shape[2] === undefined ? accepted<number[]>(Array(COMPARTMENTS).fill(0)) : readTensions(shape[2], 'helium');
  if (!heliumBar.ok) return heliumBar;
  return accepted({ kind: 'tensions', nitrogenBar: nitrogenBar.value, heliumBar: heliumBar.value });
}

function readTensions(text: string, gas: string): Parsed<number[]> {
  const tensions: number[] = [];
  for (const word of text.trim().split(/\s+/)) {
    const read = readNumber(word);
    if (!read.ok) return read;
    tensions.push(read.value.value);
  }
  if (tensions.length === COMPARTMENTS) return accepted(tensions);
  return refused(
    `There are ${tensions.length} tensions of ${gas}, not ${COMPARTMENTS}.`,
    'Give one for each compartment, the fastest first.',
  );
}

/** Tensions as the value of `tissues`, bar; helium is left out where there is none. Reads back as exactly the same. */
export function writeTissues(start: Extract<Start, { kind: 'tensions' }>): string {
  const nitrogen = `nitrogen ${start.nitrogenBar.map(plainNumber).join(' ')} bar`;
  if (start.heliumBar.every((tension) => tension === 0)) return nitrogen;
  return `${nitrogen}, helium ${start.heliumBar.map(plainNumber).join(' ')} bar`;
}
