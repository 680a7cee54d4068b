/** Finds which of many phrases a line begins with: the longest one, with any spaces or hyphens between its words. */
export interface PhraseFinder {
  /** The phrase found, in its own spelling, and where it ends in the line; `from` is where to look. */
  find(plainLine: string, from: number): { phrase: string; end: number } | undefined;
}

/**
 * Finds any of some phrases at a place in a text, the longest that fits; words may be joined by spaces, hyphens or
 * underscores.
 */
export function phraseFinder(phrases: readonly string[]): PhraseFinder {
  const longestFirst = [...phrases].sort((one, other) => other.length - one.length);
  const pattern = new RegExp(
    `(?:${longestFirst.map((phrase) => phrase.replaceAll(' ', '[\\s_-]+')).join('|')})(?![a-z])`,
    'y',
  );
  return {
    find(plainLine, from) {
      pattern.lastIndex = from;
      const found = pattern.exec(plainLine);
      return found ? { phrase: found[0].replace(/[\s_-]+/g, ' '), end: pattern.lastIndex } : undefined;
    },
  };
}
