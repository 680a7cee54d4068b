import type { Setup } from '../setup';

/** The unit every other is held against: told what is so, and with nothing wrong with it. */
export const SET_RIGHT: Setup = {
  name: 'Set right',
  mode: 'dive',
  depthOffsetM: 0,
  depthScale: 1,
  freshBeforeDives: [],
};
