import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import { NO_PROGRESS, progressIn, readProgress, type LessonProgress, type Progress } from '@/lib/lesson/progress';
import { safeStorage } from '../../parts/safe-storage';
import { progressKey } from './progress-key';

interface ProgressStore {
  readonly progress: Progress;
  readonly update: (change: (before: Progress) => Progress) => void;
}

/** What this person has done in lessons: kept on this machine, and nowhere else. */
export const useProgress = create<ProgressStore>()(
  persist(
    (set) => ({
      progress: NO_PROGRESS,
      update: (change) => set(({ progress }) => ({ progress: change(progress) })),
    }),
    {
      name: progressKey,
      version: 1,
      storage: createJSONStorage(() => safeStorage),
      partialize: ({ progress }) => ({ progress }),
      migrate: (stored) => stored as { progress: Progress },
      merge: (stored, current) => ({ ...current, progress: readProgress((stored as { progress?: unknown } | undefined)?.progress) }),
    },
  ),
);

/** What has been done in one lesson. */
export function useLessonProgress(slug: string): LessonProgress {
  return useProgress(({ progress }) => progressIn(progress, slug));
}
