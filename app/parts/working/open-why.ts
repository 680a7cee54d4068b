import { create } from 'zustand';

/** Which "why?" is being answered, by the id of its button. One at a time: asking another puts the first away. */
export const useOpenWhy = create<{ id: string | undefined; ask: (id: string) => void; close: () => void }>()((set) => ({
  id: undefined,
  ask: (id) => set({ id }),
  close: () => set({ id: undefined }),
}));
