import { create } from 'zustand';
import { NO_PROGRESS, progressIn, type LessonProgress, type Progress } from '@/lib/lesson/progress';
import { keptRecord } from '../../keep/kept-record';
import { progressKey, progressOfStored, storedProgress } from './progress-key';

interface ProgressStore {
  readonly progress: Progress;
  readonly update: (change: (before: Progress) => Progress) => void;
}

/** What this person has done in lessons: kept on this machine, and nowhere else. */
export const useProgress = create<ProgressStore>()((set, get) => ({
  progress: NO_PROGRESS,
  update(change) {
    // Another window may have gone on in another lesson: what is done here is done to what it has kept.
    const latest = kept.isOthers() ? (kept.now() ?? get().progress) : get().progress;
    const progress = change(latest);
    set({ progress });
    kept.keep(progress);
  },
}));

const kept = keptRecord<Progress>({
  name: progressKey,
  read: progressOfStored,
  write: storedProgress,
  words: {
    unread: 'What was kept of your lessons can’t be read here, so they begin anew.',
    full: 'There is no room left in this browser to keep what you do in lessons: it lasts until the page is closed. Print your results to keep them; then delete dives on the desk that you no longer need.',
    blocked:
      'This browser does not let the page keep anything, so what you do in lessons lasts until the page is closed. Print your results to keep them.',
    fileName: 'halftime-lessons-unread.json',
  },
  onOther: (progress) => useProgress.setState({ progress }),
});

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
