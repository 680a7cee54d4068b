import type { PreparedStep } from '../prepared';

/** Whether a step has a dive to be seen together with its words and its controls, all in one window. */
export function fillsWindow(step: PreparedStep): boolean {
  return step.kind === 'run' || step.kind === 'try' || (step.kind === 'read' && step.look !== undefined);
}
