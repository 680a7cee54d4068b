import { amount, onOff, type ValuesOf } from './setting';

/** The what-if of bubbles that hinder washout. Illustrative throughout: nobody knows these figures. */
export const slowedWashoutSettings = {
  on: onOff(false),
  /** What washout half-times are multiplied by. */
  times: amount(2, 1, 10),
  /** For so long after each breach of the rate limit, min. */
  forMin: amount(30, 1, 1440),
};
export type SlowedWashoutSettings = ValuesOf<typeof slowedWashoutSettings>;
