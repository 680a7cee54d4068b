import { createContext, type ReactNode } from 'react';
import type { PictureId } from '../../pictures/picture-ids';

/** The room a figure is given to fill. */
export interface Room {
  /** Which pictures are shown, to be chosen in the menu of each. */
  readonly choose: ReactNode;
  /** All that are in sight with it. */
  readonly inSight: readonly PictureId[];
  /** In place of the title, where several pictures take turns in one room. */
  readonly tabs?: ReactNode;
}

/** A figure fills its room where there is one; elsewhere, as in a lesson, it is as tall as its picture wishes. */
export const RoomContext = createContext<Room | undefined>(undefined);
