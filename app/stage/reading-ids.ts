/** The readings of the desk, each of which can be covered by itself. */
export const READING_IDS = [
  'depth',
  'time',
  'no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
  'supersaturation',
  'surfacing-supersaturation',
  'rate',
  'safety-stop',
  'imposed-stop',
  'no-fly',
  'oxygen-pressure',
  'oxygen-single',
  'oxygen-daily',
  'oxygen-pulmonary',
  'gas-density',
  'cylinder',
] as const;
export type ReadingId = (typeof READING_IDS)[number];
