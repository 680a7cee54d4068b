import { create } from 'zustand';
import { oncePainted } from '../after-paint';

interface OpenWhy {
  readonly id: string | undefined;
  /** What was put away and is out of sight, but not taken from the page yet: that takes longer than a press may. */
  readonly going: string | undefined;
  readonly ask: (id: string) => void;
  readonly close: () => void;
}

/** Which "why?" is being answered, by the id of its button. One at a time: asking another puts the first away. */
export const useOpenWhy = create<OpenWhy>()((set) => {
  const turn = (id: string | undefined) => {
    set((before) => ({ id, going: before.id === id ? undefined : before.id }));
    oncePainted(() => set({ going: undefined }));
  };
  return { id: undefined, going: undefined, ask: turn, close: () => turn(undefined) };
});
