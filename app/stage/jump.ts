import type { DeskState } from './desk-state';

/** A longer way in one change is a jump, s of the clock: whoever jumps over something wants to be past it. */
const JUMP_S = 0.6;

/** The longest way the time cursor goes by itself in one change, s of the dive. */
export function longestGoneS({ speed }: Pick<DeskState, 'speed'>): number {
  return JUMP_S * Number(speed);
}

/** A frame that comes later than this after the one before is not what a dive plays in, s of the clock. */
const FRAME_S = 0.25;

/** Whether the time cursor was moved by a hand or a press, and not by the dive playing. */
export function isMovedByHand(now: DeskState, before: DeskState): boolean {
  const wayS = Math.abs(now.cursorS - before.cursorS);
  return wayS > 0 && !(now.playing && wayS <= FRAME_S * Number(now.speed));
}
