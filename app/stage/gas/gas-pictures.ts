/** What the gas breathed does, fetched in one piece when the first of these pictures is asked for. */
export { HeliumFigure } from './HeliumFigure';
export { OxygenFigure } from './OxygenFigure';
export { StagedFigure } from './StagedFigure';
export { SupplyFigure } from './SupplyFigure';
