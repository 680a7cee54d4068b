import { create } from 'zustand';

interface StatusMessage {
  /** Grows with every message, so that saying the same thing twice is heard twice. */
  id: number;
  text: string;
  /** Something to do about it, such as undoing what was just done. */
  action?: { label: string; run: () => void };
}

interface Status {
  message: StatusMessage | undefined;
  /** The dialog that holds the page: what is said then is said in it, where it is seen and heard. */
  holder: HTMLElement | undefined;
  say: (text: string, action?: StatusMessage['action']) => void;
  clear: () => void;
}

/** What the app has just done, in a few words. The newest replaces the last. */
export const useStatus = create<Status>()((set, get) => ({
  message: undefined,
  holder: undefined,
  say: (text, action) => set({ message: { id: (get().message?.id ?? 0) + 1, text, ...(action && { action }) } }),
  clear: () => set({ message: undefined }),
}));
