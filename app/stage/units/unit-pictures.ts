/** What units make of the dive, fetched in one piece when the first of these pictures is asked for. */
export { AscentFigure } from './AscentFigure';
export { LogFigure } from './LogFigure';
export { SurfaceFigure } from './SurfaceFigure';
export { UnitsFigure } from './UnitsFigure';
