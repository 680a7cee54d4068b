import { readProgress, type Progress } from '@/lib/lesson/progress';

/** Where the progress in lessons is kept on this machine. */
export const progressKey = 'halftime.lessons';

const VERSION = 1;

/** Progress in the form it is stored in. */
export const storedProgress = (progress: Progress) => ({ state: { progress }, version: VERSION });

/** Progress from what was stored; undefined where that is none, such as one of a newer version. */
export function progressOfStored(stored: unknown): Progress | undefined {
  const { version, state } = (stored ?? {}) as { version?: unknown; state?: { progress?: unknown } | null };
  const progress = state?.progress;
  return version === VERSION && typeof progress === 'object' && progress !== null ? readProgress(progress) : undefined;
}
