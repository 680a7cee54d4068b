/** How a safety stop stands. Tracks hold the index. */
export const SAFETY_STOP_STATES = ['none', 'due', 'counting', 'paused', 'done', 'skipped'] as const;
export type SafetyStopState = (typeof SAFETY_STOP_STATES)[number];

export const SAFETY_STOP_MEANINGS: Readonly<Record<SafetyStopState, string>> = {
  none: 'The dive has not been deep enough for one.',
  due: 'It is advised on the way up.',
  counting: 'You are in the band and the time runs down.',
  paused: 'You have left the band, or a required stop comes first; the time stands still.',
  done: 'It has been made.',
  skipped: 'You surfaced before it was over. It was advice: nothing is owed.',
};
