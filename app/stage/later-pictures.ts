/** Every picture a desk does not open with, fetched in one piece when the first of them is asked for: what they share is in it once. */
export { LoadingMapFigure } from './figures/LoadingMapFigure';
export { NoStopFigure } from './figures/NoStopFigure';
export { PressureFigure } from './figures/PressureFigure';
export { SupersaturationFigure } from './figures/SupersaturationFigure';
export { HeliumFigure } from './gas/HeliumFigure';
export { OxygenFigure } from './gas/OxygenFigure';
export { StagedFigure } from './gas/StagedFigure';
export { SupplyFigure } from './gas/SupplyFigure';
export { AscentFigure } from './units/AscentFigure';
export { LogFigure } from './units/LogFigure';
export { SurfaceFigure } from './units/SurfaceFigure';
export { UnitsFigure } from './units/UnitsFigure';
