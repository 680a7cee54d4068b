import type { AskOf } from '@/lib/class/ask';
import type { DrawAsked } from '@/lib/lesson/questions/sketch';

/** The paper of a question as it is drawn on: nothing of what is true is on it. */
export function drawAskedOf({ axes }: AskOf<'draw'>): DrawAsked {
  return { ...axes, since: axes.since, within: 0, format: undefined, truth: [] };
}
