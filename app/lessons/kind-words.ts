import type { PreparedStep } from './prepared';

/** The kinds of step as they read. */
export const KIND_WORDS: Readonly<Record<PreparedStep['kind'], string>> = {
  read: 'Read',
  predict: 'Predict',
  run: 'Watch',
  explain: 'The working',
  try: 'Your turn',
  check: 'Check',
  recap: 'In short',
};
