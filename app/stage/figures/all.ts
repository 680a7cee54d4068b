import { createElement, type ComponentType } from 'react';
import { fetchedLater } from '../../parts/fetched-later';
import { PictureWaiting } from './PictureWaiting';
import type { PictureId } from '../../pictures/picture-ids';

export interface PictureKind {
  readonly title: string;
  /** Draws itself from the desk it stands on. */
  readonly Figure: ComponentType;
  /** Takes the whole width of the desk; the others stand side by side. */
  readonly wide: boolean;
}

const later = (load: () => Promise<ComponentType>) => fetchedLater(load, createElement(PictureWaiting));

/** Every picture there is, each listed here once. */
export const pictures: Record<PictureId, PictureKind> = {
  profile: {
    title: 'The dive',
    Figure: later(async () => (await import('../after-opening')).ProfileFigure),
    wide: true,
  },
  chase: { title: 'The chase', Figure: later(async () => (await import('../after-opening')).ChaseFigure), wide: false },
  pressure: {
    title: 'Pressure against pressure',
    Figure: later(async () => (await import('../later-pictures')).PressureFigure),
    wide: false,
  },
  loading: {
    title: 'The loading map',
    Figure: later(async () => (await import('../later-pictures')).LoadingMapFigure),
    wide: true,
  },
  supersaturation: {
    title: 'Supersaturation',
    Figure: later(async () => (await import('../later-pictures')).SupersaturationFigure),
    wide: true,
  },
  'no-stop': {
    title: 'No-stop time',
    Figure: later(async () => (await import('../later-pictures')).NoStopFigure),
    wide: true,
  },
  log: {
    title: 'What the unit tells',
    Figure: later(async () => (await import('../later-pictures')).LogFigure),
    wide: true,
  },
  units: {
    title: 'Units side by side',
    Figure: later(async () => (await import('../later-pictures')).UnitsFigure),
    wide: true,
  },
  rules: {
    title: 'Rules of the unit',
    Figure: later(async () => (await import('../units/RulesFigure')).RulesFigure),
    wide: true,
  },
  ascent: {
    title: 'The way up, four ways',
    Figure: later(async () => (await import('../later-pictures')).AscentFigure),
    wide: true,
  },
  surface: {
    title: 'After the dive',
    Figure: later(async () => (await import('../later-pictures')).SurfaceFigure),
    wide: true,
  },
  oxygen: {
    title: 'Oxygen',
    Figure: later(async () => (await import('../later-pictures')).OxygenFigure),
    wide: true,
  },
  supply: {
    title: 'Cylinders',
    Figure: later(async () => (await import('../later-pictures')).SupplyFigure),
    wide: true,
  },
  staged: {
    title: 'Staged stops',
    Figure: later(async () => (await import('../later-pictures')).StagedFigure),
    wide: true,
  },
  helium: {
    title: 'Helium and nitrogen',
    Figure: later(async () => (await import('../later-pictures')).HeliumFigure),
    wide: true,
  },
};
