import { fetchedLater } from '../../../parts/fetched-later';
import paper from '../../../parts/answers/sketch.module.css';

/** Paper to draw a curve on. */
export const SketchPad = fetchedLater(
  async () => (await import('../sketches')).SketchPad,
  <div className={paper.paper} />,
);

/** A curve that was answered, with the true one over it. */
export const SketchOverlay = fetchedLater(async () => (await import('../sketches')).SketchOverlay);
