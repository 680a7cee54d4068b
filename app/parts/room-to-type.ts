/**
 * Whether a window has room for a box to type in beside what is drawn by hand: on a phone and in a low window the drawing
 * has it, and who wants to write opens the box.
 */
export function hasRoomToType(): boolean {
  return globalThis.matchMedia?.('(max-width: 47.99rem), (max-height: 53rem)').matches !== true;
}
