/** A curve to be drawn, and one that was: fetched in one piece where a curve is asked for. */
export { SketchPad } from '../../parts/answers/SketchPad';
export { SketchOverlay } from './stage/SketchOverlay';
