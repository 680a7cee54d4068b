import { act } from '@testing-library/react';
import { oncePainted } from '@/app/parts/after-paint';
import type { DeskStore } from '@/app/stage/desk-store';

/** Until all that follows a press by a frame is there. */
export const followed = (): Promise<void> => act(() => new Promise<void>(oncePainted));

/** Moves the time cursor of a desk, s, and waits for what follows it. */
export async function setCursor(store: DeskStore, timeS: number): Promise<void> {
  act(() => store.getState().setCursor(timeS));
  await followed();
}
