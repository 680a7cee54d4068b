import { STEP_KINDS, type StepKind } from '@/lib/lesson/step';

/** The kind of a step of whatever shape, where it is one that is known. */
export function stepKind(step: unknown): StepKind | undefined {
  const kind = typeof step === 'object' && step !== null ? (step as { kind?: unknown }).kind : undefined;
  return STEP_KINDS.find((one) => one === kind);
}
