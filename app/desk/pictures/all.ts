import type { ComponentType } from 'react';
import { ChaseFigure } from './ChaseFigure';
import { LoadingMapFigure } from './LoadingMapFigure';
import { NoStopFigure } from './NoStopFigure';
import { PressureFigure } from './PressureFigure';
import { ProfileFigure } from './ProfileFigure';
import { SupersaturationFigure } from './SupersaturationFigure';
import { HeliumFigure } from '../exposure/HeliumFigure';
import { OxygenFigure } from '../exposure/OxygenFigure';
import { StagedFigure } from '../exposure/StagedFigure';
import { SupplyFigure } from '../exposure/SupplyFigure';
import { AscentFigure } from '../units/AscentFigure';
import { LogFigure } from '../units/LogFigure';
import { RulesFigure } from '../units/RulesFigure';
import { SurfaceFigure } from '../units/SurfaceFigure';
import { UnitsFigure } from '../units/UnitsFigure';
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
  pressure: { title: 'Pressure against pressure', Figure: PressureFigure, wide: false },
  loading: { title: 'The loading map', Figure: LoadingMapFigure, wide: true },
  supersaturation: { title: 'Supersaturation', Figure: SupersaturationFigure, wide: true },
  'no-stop': { title: 'No-stop time', Figure: NoStopFigure, wide: true },
  log: { title: 'What the unit tells', Figure: LogFigure, wide: true },
  units: { title: 'Units side by side', Figure: UnitsFigure, wide: true },
  rules: { title: 'Rules of the unit', Figure: RulesFigure, wide: true },
  ascent: { title: 'The way up, four ways', Figure: AscentFigure, wide: true },
  surface: { title: 'After the dive', Figure: SurfaceFigure, wide: true },
  oxygen: { title: 'Oxygen', Figure: OxygenFigure, wide: true },
  supply: { title: 'Cylinders', Figure: SupplyFigure, wide: true },
  staged: { title: 'Staged stops', Figure: StagedFigure, wide: true },
  helium: { title: 'Helium and nitrogen', Figure: HeliumFigure, wide: true },
};
