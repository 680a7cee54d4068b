import type { ComponentType } from 'react';
import { fetchedLater } from '../../parts/fetched-later';
import { ChaseFigure } from './ChaseFigure';
import { ProfileFigure } from './ProfileFigure';
import type { PictureId } from './picture-ids';

export { PICTURE_IDS, type PictureId } from './picture-ids';

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
  pressure: { title: 'Pressure against pressure', Figure: fetchedLater(async () => (await import('./PressureFigure')).PressureFigure), wide: false },
  loading: { title: 'The loading map', Figure: fetchedLater(async () => (await import('./LoadingMapFigure')).LoadingMapFigure), wide: true },
  supersaturation: { title: 'Supersaturation', Figure: fetchedLater(async () => (await import('./SupersaturationFigure')).SupersaturationFigure), wide: true },
  'no-stop': { title: 'No-stop time', Figure: fetchedLater(async () => (await import('./NoStopFigure')).NoStopFigure), wide: true },
  log: { title: 'What the unit tells', Figure: fetchedLater(async () => (await import('../units/LogFigure')).LogFigure), wide: true },
  units: { title: 'Units side by side', Figure: fetchedLater(async () => (await import('../units/UnitsFigure')).UnitsFigure), wide: true },
  rules: { title: 'Rules of the unit', Figure: fetchedLater(async () => (await import('../units/RulesFigure')).RulesFigure), wide: true },
  ascent: { title: 'The way up, four ways', Figure: fetchedLater(async () => (await import('../units/AscentFigure')).AscentFigure), wide: true },
  surface: { title: 'After the dive', Figure: fetchedLater(async () => (await import('../units/SurfaceFigure')).SurfaceFigure), wide: true },
  oxygen: { title: 'Oxygen', Figure: fetchedLater(async () => (await import('../exposure/OxygenFigure')).OxygenFigure), wide: true },
  supply: { title: 'Cylinders', Figure: fetchedLater(async () => (await import('../exposure/SupplyFigure')).SupplyFigure), wide: true },
  staged: { title: 'Staged stops', Figure: fetchedLater(async () => (await import('../exposure/StagedFigure')).StagedFigure), wide: true },
  helium: { title: 'Helium and nitrogen', Figure: fetchedLater(async () => (await import('../exposure/HeliumFigure')).HeliumFigure), wide: true },
};
