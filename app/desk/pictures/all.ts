import type { ComponentType } from 'react';
import { ChaseFigure } from './ChaseFigure';
import { ProfileFigure } from './ProfileFigure';

export const PICTURE_IDS = ['profile', 'chase'] as const;
export type PictureId = (typeof PICTURE_IDS)[number];

export interface PictureKind {
  readonly title: string;
  /** Draws itself from the desk it stands on. */
  readonly Figure: ComponentType;
  /** Takes the whole width of the desk; the others stand side by side. */
  readonly wide: boolean;
}

/** Every picture there is, each listed here once. */
export const pictures: Record<PictureId, PictureKind> = {
  profile: { title: 'The dive', Figure: ProfileFigure, wide: true },
  chase: { title: 'The chase', Figure: ChaseFigure, wide: false },
};
