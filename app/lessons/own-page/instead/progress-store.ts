import { create } from 'zustand';
import { NO_PROGRESS, progressIn, type LessonProgress, type Progress } from '@/lib/lesson/progress';

/** In place of the site's: what is answered on a page of its own lasts until the page is closed, and is kept nowhere. */
export const useProgress = create<{
  readonly progress: Progress;
  readonly update: (change: (before: Progress) => Progress) => void;
}>()((set, get) => ({
  progress: NO_PROGRESS,
  update: (change) => set({ progress: change(get().progress) }),
}));

export function useLessonProgress(slug: string): LessonProgress {
  return useProgress(({ progress }) => progressIn(progress, slug));
}
