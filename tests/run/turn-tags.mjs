/** A test, or a file by a comment `@module-tag in-turn`, that takes turns; and one in such a file that is asked in every run. */
export const TURN_TAGS = [
  { name: 'in-turn', description: 'One run in so many makes it, another each time.' },
  { name: 'every-run', description: 'A main path: every run makes it, whatever its file says.' },
];
