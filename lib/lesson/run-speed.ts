const SPEEDS = [30, 60, 120] as const;
/** A run that nobody hurries takes no longer than this, s, as far as the speeds allow. */
const PATIENCE_S = 90;

/** How fast a run plays unless told, in seconds of the dive to one of the clock: a short way up slowly, a night quickly. */
export function runSpeed(spanS: number): (typeof SPEEDS)[number] {
  return SPEEDS.find((speed) => spanS / speed <= PATIENCE_S) ?? SPEEDS.at(-1)!;
}
