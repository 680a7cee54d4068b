/** The pictures of gas in the body besides the chase, fetched in one piece when the first of them is asked for. */
export { LoadingMapFigure } from './LoadingMapFigure';
export { NoStopFigure } from './NoStopFigure';
export { PressureFigure } from './PressureFigure';
export { SupersaturationFigure } from './SupersaturationFigure';
