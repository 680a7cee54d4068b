import type { Lever } from '../lever';
import { leaveEarlier } from './leave-earlier';
import { longerInterval } from './longer-interval';
import { otherOrder } from './other-order';
import { pause } from './pause';
import { fasterAllTheWay, slowerAllTheWay, slowerWhereTooFast } from './rates';
import { richerGas } from './richer-gas';
import { deepestShallower, everyLevelShallower } from './shallower';
import { shorterDeepest } from './shorter-deepest';

/** Every lever, in the order they are told. */
export const LEVERS: readonly Lever[] = [
  leaveEarlier,
  deepestShallower,
  everyLevelShallower,
  shorterDeepest,
  slowerWhereTooFast,
  slowerAllTheWay,
  fasterAllTheWay,
  pause,
  richerGas,
  longerInterval,
  otherOrder,
];
