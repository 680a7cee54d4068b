import { sizesByWord } from './amount';

/** One international foot, m (exact; international yard and pound agreement, 1959). */
export const METRES_PER_FOOT = 0.3048;

/** Words for units of length and their size, m. */
export const LENGTH_UNITS = sizesByWord([
  [1, 'm, metre, metres, meter, meters'],
  [METRES_PER_FOOT, 'ft, foot, feet'],
]);
