import { ChaseFigure } from '../../../stage/figures/ChaseFigure';
import { LoadingMapFigure } from '../../../stage/figures/LoadingMapFigure';
import { NoStopFigure } from '../../../stage/figures/NoStopFigure';
import { ProfileFigure } from '../../../stage/figures/ProfileFigure';
import { SupersaturationFigure } from '../../../stage/figures/SupersaturationFigure';
import { LogFigure } from '../../../stage/units/LogFigure';
import { UnitsFigure } from '../../../stage/units/UnitsFigure';
import type { PictureKind } from '../../../stage/figures/all';
import type { CARRIED_PICTURES } from '../carried-pictures';

/** In place of all there are: what a page of its own has with it, and nothing fetched later. */
export const pictures: Record<(typeof CARRIED_PICTURES)[number], PictureKind> = {
  profile: { title: 'The dive', Figure: ProfileFigure, wide: true },
  chase: { title: 'The chase', Figure: ChaseFigure, wide: false },
  loading: { title: 'The loading map', Figure: LoadingMapFigure, wide: true },
  supersaturation: { title: 'Supersaturation', Figure: SupersaturationFigure, wide: true },
  'no-stop': { title: 'No-stop time', Figure: NoStopFigure, wide: true },
  log: { title: 'What the unit tells', Figure: LogFigure, wide: true },
  units: { title: 'Units side by side', Figure: UnitsFigure, wide: true },
};
