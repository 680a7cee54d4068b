import { create } from 'zustand';

/** How much larger than usual pictures are drawn: lines, marks and letters alike. */
export const usePictureScale = create<number>()(() => 1);
