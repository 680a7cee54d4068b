import { plainText } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import { LONGEST_SETUP_NAME, MOST_MEMORY_LOSSES } from '../../bounds';
import type { Setup } from '../../setup';
import { nearest } from '../nearest';
import { phraseFinder } from '../phrases';
import { shifted } from './setting-values';
import { SETUP_PARTS, type SetupPart } from './setup-parts';

const partByPhrase = new Map(
  SETUP_PARTS.flatMap((part) => [part.words, ...part.also].map((phrase) => [phrase, part] as const)),
);
const PHRASES = [...partByPhrase.keys()];
const finder = phraseFinder(PHRASES);
const FORM = 'Write a name and what it is set to, such as Rental unit, gas 32%, altitude 2000 m.';

interface Piece {
  readonly text: string;
  readonly at: readonly [from: number, to: number];
}

/** Reads `Rental unit, gas 32%, depth +0.8 m`: a name, then parts in any order, with commas or semicolons between. */
export function readSetup(text: string): Parsed<Setup> {
  const [first, ...parts] = piecesOf(text);
  const name = placed(readName(first!.text), first!);
  if (!name.ok) return name;
  let setup: Setup = { name: name.value, mode: 'dive', depthOffsetM: 0, depthScale: 1, freshBeforeDives: [] };
  const given = new Set<string>();
  for (const piece of parts) {
    const part = placed(readPart(piece.text), piece);
    if (!part.ok) return part;
    for (const key of Object.keys(part.value)) {
      if (given.has(key))
        return placed(
          refused(`${quoted(piece.text)} says again what is said before it.`, 'Keep one of the two.'),
          piece,
        );
      given.add(key);
    }
    setup = { ...setup, ...part.value };
  }
  if (setup.freshBeforeDives.length > MOST_MEMORY_LOSSES) {
    return refused('This unit loses its memory too often.', `Write at most ${MOST_MEMORY_LOSSES} dives.`);
  }
  return accepted(setup);
}

/** A name, in quotation marks where it would be taken for something else. */
function readName(text: string): Parsed<string> {
  const within = /^"([^"]*)"$/.exec(text)?.[1]?.trim();
  const name = within ?? text;
  if (name === '') return refused('The unit has no name.', FORM);
  if (name.includes('"'))
    return refused(
      `${quoted(text)} has a stray quotation mark.`,
      'Put the whole name in quotation marks, or none of it.',
    );
  if (name.length > LONGEST_SETUP_NAME)
    return refused(`${quoted(name)} is a long name.`, `Write at most ${LONGEST_SETUP_NAME} characters.`);
  if (within === undefined && readsAsPart(name)) {
    return refused(`${quoted(name)} is what a unit is set to; its name comes first.`, `Write Rental unit, ${name}.`);
  }
  return accepted(name);
}

function readsAsPart(text: string): boolean {
  return readPart(text).ok;
}

function readPart(text: string): Parsed<Partial<Setup>> {
  if (text === '') return refused('Something is missing here.', FORM);
  const found = finder.find(plainText(text), 0);
  if (!found) return unknownPart(text);
  const part = partByPhrase.get(found.phrase)!;
  const value = text.slice(found.end).trim();
  if (value === '' && !part.read('').ok) return refused(`${quoted(text)} has no value.`, `Write ${exampleOf(part)}.`);
  const read = part.read(value);
  return value === '' ? read : shifted(read, text.length - value.length, value.length);
}

function exampleOf({ example }: SetupPart): string {
  return example.replace(', ', ' or ');
}

function unknownPart(text: string): Parsed<never> {
  const word = /^[^\d+\-−]*/.exec(plainText(text))![0].trim();
  const close = nearest(word, PHRASES);
  const all = SETUP_PARTS.map(({ words }) => words);
  return refused(
    `${quoted(text)} is nothing a unit can be set to.`,
    close ? `Did you mean ${quoted(close)}?` : `Write ${all.slice(0, -1).join(', ')} or ${all.at(-1)}.`,
  );
}

/** A setup in words that read back as exactly the same. */
export function writeSetup(setup: Setup): string {
  const name = readsAsPart(setup.name) ? `"${setup.name}"` : setup.name;
  return [name, ...SETUP_PARTS.flatMap((part) => part.write(setup) ?? [])].join(', ');
}

/** The text cut at commas and semicolons; a comma between digits is a decimal comma. */
function piecesOf(text: string): Piece[] {
  const cuts = [...text.matchAll(/;|(?<!\d),|,(?!\d)/g)].map(({ index }) => index);
  return [0, ...cuts.map((at) => at + 1)].map((from, i) => {
    const whole = text.slice(from, cuts[i]);
    const piece = whole.trim();
    // Where nothing is written, the comma before it is all there is to point at.
    const at = piece === '' && i > 0 ? cuts[i - 1]! : from + whole.length - whole.trimStart().length;
    return { text: piece, at: [at, at + Math.max(1, piece.length)] };
  });
}

function placed<T>(read: Parsed<T>, { at: [from, to] }: Piece): Parsed<T> {
  return shifted(read, from, to - from);
}
