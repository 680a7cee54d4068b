import { create } from 'zustand';
import { NO_PROGRESS, progressIn, type LessonProgress, type Progress } from '@/lib/lesson/progress';
import { keptRecord } from '../../keep/kept-record';
import { progressKind } from '../../keep/lesson-progress';

interface ProgressStore {
  readonly progress: Progress;
  readonly update: (change: (before: Progress) => Progress) => void;
}

/** What this person has done in lessons: kept on this machine, and nowhere else. */
export const useProgress = create<ProgressStore>()((set, get) => ({
  progress: NO_PROGRESS,
  update(change) {
    // Another window may have gone on in another lesson: what is done here is done to what it has kept.
    const progress = change((kept.isOthers() ? kept.now() : undefined) ?? get().progress);
    set({ progress });
    kept.keep(progress);
  },
}));

const kept = keptRecord(progressKind, (progress) => useProgress.setState({ progress }));

/** Takes up what was kept; also done once as the page is loaded. */
export function restoreProgress(): void {
  useProgress.setState({ progress: kept.now() ?? NO_PROGRESS });
}
restoreProgress();
if (typeof window !== 'undefined') kept.listen();

/** What has been done in one lesson. */
export function useLessonProgress(slug: string): LessonProgress {
  return useProgress(({ progress }) => progressIn(progress, slug));
}
