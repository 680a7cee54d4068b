import { plainText } from '../../quantity/number';
import { quoted } from '../../quantity/parsed';
import { nearest } from './nearest';
import { readStep } from './read-step';
import { instead, type LineRead, type Span, type Trouble } from './line';
import { phraseFinder } from './phrases';
import { SETTINGS } from './settings/settings';
import { STEPS } from './step-words';
import type { Setting } from './settings/setting';

/** Longest line understood, characters before any remark: room for the longest setting, and no more. */
const LONGEST_LINE = 2000;

const settingByPhrase = new Map(
  SETTINGS.flatMap((setting) => [setting.name, ...setting.also].map((phrase) => [phrase, setting] as const)),
);
const stepByPhrase = new Map(STEPS.flatMap(({ kind, words }) => words.map((phrase) => [phrase, kind] as const)));
const PHRASES = [...settingByPhrase.keys(), ...stepByPhrase.keys()];
const finder = phraseFinder(PHRASES);
/** Phrases of one word, of two and of three: each is compared with as many words of a line. */
const PHRASES_BY_LENGTH = [1, 2, 3].map((count) => PHRASES.filter((phrase) => phrase.split(' ').length === count));

const REMARK: LineRead = { as: 'remark' };

/** Where the remark at the end of a line begins: at its first `#`, or at the end of the line. */
export function remarkFrom(line: string): number {
  const hash = line.indexOf('#');
  return hash < 0 ? line.length : hash;
}

/** How many lines are remembered: a long script, and a good deal of dragging. */
const REMEMBERED = 2000;
const memory = new Map<string, LineRead>();

/**
 * Reads one line of a script by itself. What a line says depends on nothing else, so lines read before are remembered:
 * an edit of one line of a script, sixty times a second, reads that line alone.
 */
export function readLine(line: string): LineRead {
  const known = memory.get(line);
  if (known) return known;
  if (memory.size >= REMEMBERED) memory.clear();
  const read = readNewLine(line);
  if (line.length <= LONGEST_LINE) memory.set(line, read);
  return read;
}

function readNewLine(line: string): LineRead {
  const typed = line.slice(0, remarkFrom(line));
  const trimmed = typed.trim();
  if (trimmed === '') return REMARK;
  const from = typed.length - typed.trimStart().length;
  const to = from + trimmed.length;
  if (trimmed.length > LONGEST_LINE) return tooLong([from, to]);
  const plain = plainText(typed);
  const found = finder.find(plain, from);
  if (!found) return unknown(typed, plain, from, to);
  const valueFrom = Math.min(to, found.end + /^\s*[:=]?\s*/.exec(plain.slice(found.end))![0].length);
  const setting = settingByPhrase.get(found.phrase);
  if (setting) return readSetting(setting, typed, [from, found.end], [valueFrom, to]);
  const verb: Span = [from, found.end];
  const kind = stepByPhrase.get(found.phrase)!;
  const { step, troubles } = readStep({
    line: typed,
    plain,
    kind,
    phrase: found.phrase,
    verb,
    values: [valueFrom, to],
  });
  return { as: 'step', step, verb, body: [from, to], troubles };
}

function readSetting(setting: Setting, line: string, name: Span, span: Span): LineRead {
  const text = line.slice(...span);
  const troubles: Trouble[] = [];
  if (text === '') {
    troubles.push({
      span: name,
      what: `${quoted(setting.name)} has no value.`,
      mend: `Write “${setting.name}: ${setting.examples[0]}”.`,
      fixes: instead(
        [name[0], span[1]],
        setting.examples.map((example) => `${setting.name}: ${example}`),
      ),
    });
    return { as: 'setting', setting, name, value: { span, value: undefined }, troubles };
  }
  const read = setting.read(text);
  if (read.ok) return { as: 'setting', setting, name, value: { span, value: read.value }, troubles };
  const [from, to] = read.at ?? [0, text.length];
  const wrong: Span = [span[0] + from, span[0] + to];
  troubles.push({ span: wrong, what: read.what, mend: read.mend, fixes: instead(wrong, read.instead) });
  return { as: 'setting', setting, name, value: { span, value: undefined }, troubles };
}

function tooLong(span: Span): LineRead {
  const what = `This line is longer than ${LONGEST_LINE} characters.`;
  return { as: 'unknown', troubles: [{ span, what, mend: 'Break it into several lines, or put # before a remark.' }] };
}

/** The names of things done, and the words that begin the step. */
const NOUNS: ReadonlyMap<string, string> = new Map([
  ['ascent', 'ascend'],
  ['ascending', 'ascend'],
  ['descent', 'descend'],
  ['descending', 'descend'],
  ['staying', 'stay'],
]);

/** A line that begins with nothing known: points at its first words and offers the phrase most like them. */
function unknown(line: string, plain: string, from: number, to: number): LineRead {
  const words = /^[^\d:=]*/
    .exec(plain.slice(from, to))![0]
    .trim()
    .slice(0, 40)
    .split(/[\s_-]+/);
  const first = /^\S+?(?=[\s:=]|$)/.exec(line.slice(from, to))?.[0] ?? line.slice(from, to);
  const noun = NOUNS.get(plainText(first));
  const guess = noun ? { phrase: noun, ends: from + first.length } : guessed(words, plain, from);
  return {
    as: 'unknown',
    troubles: [
      {
        span: [from, from + first.length],
        what: `${quoted(first)} does not begin a step or a setting.`,
        mend: guess
          ? `Did you mean ${quoted(guess.phrase)}?`
          : `Begin with ${STEPS.map(({ words: [word] }) => word).join(', ')} or a setting such as water; put # before a remark.`,
        fixes: guess && [{ span: [from, guess.ends], text: guess.phrase }],
      },
    ],
  };
}

/** The phrase that the first words are most like, and where those words end; of several the longest. */
function guessed(words: readonly string[], plain: string, from: number): { phrase: string; ends: number } | undefined {
  for (let count = PHRASES_BY_LENGTH.length; count > 0; count -= 1) {
    if (count > words.length) continue;
    const phrase = nearest(words.slice(0, count).join(' '), PHRASES_BY_LENGTH[count - 1]!);
    if (phrase === undefined) continue;
    const typed = new RegExp(`^(?:[^\\s_-]+[\\s_-]*){0,${count - 1}}[^\\s_:=-]+`).exec(plain.slice(from))?.[0] ?? '';
    return { phrase, ends: from + typed.length };
  }
  return undefined;
}
