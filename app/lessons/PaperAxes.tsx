import { SketchGround } from '../parts/answers/SketchGround';
import { PAD, sketchAxes, sketchPath } from '../parts/answers/sketch-axes';
import type { PreparedDraw } from './prepared';
import sketch from '../parts/answers/sketch.module.css';

/** The axes of a curve on paper, in both systems of units: empty to draw on, or with the true curve. */
export function PaperAxes({ draw, answered }: { draw: PreparedDraw; answered: boolean }) {
  return (
    <>
      {(['metric', 'imperial'] as const).map((system) => {
        const axes = sketchAxes(draw, system);
        return (
          <svg
            key={system}
            data-in={system}
            viewBox={`0 0 ${PAD.width} ${PAD.height}`}
            className={sketch.still}
            role="img"
            aria-label={answered ? `The true curve of ${draw.noun}` : `Axes to draw ${draw.noun} on`}
          >
            <SketchGround axes={axes} />
            {answered && <path d={sketchPath(draw.truth, axes)} className={sketch.truth} />}
          </svg>
        );
      })}
    </>
  );
}
