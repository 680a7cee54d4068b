import { sketchAxes, sketchPath } from '../../parts/answers/sketch-axes';
import { SketchPaper } from '../../parts/answers/SketchPaper';
import type { PreparedDraw, PreparedLesson } from '../prepared';
import sketch from '../../parts/answers/sketch.module.css';

/** The axes of a curve on paper, in both systems of units: empty to draw on, or with the true curve. */
export function PaperAxes({
  draw: metric,
  inFeet = metric,
  answered,
}: {
  draw: PreparedDraw;
  /** The same in feet, where the lesson has figures of its own there. */
  inFeet?: PreparedDraw | undefined;
  answered: boolean;
}) {
  return (
    <>
      {(['metric', 'imperial'] as const).map((system) => {
        const draw = system === 'metric' ? metric : inFeet;
        const axes = sketchAxes(draw, system);
        return (
          <div key={system} data-in={system}>
            <SketchPaper
              axes={axes}
              className={sketch.still}
              role="img"
              aria-label={answered ? `The true curve of ${draw.noun}` : `Axes to draw ${draw.noun} on`}
            >
              {answered && <path d={sketchPath(draw.truth, axes)} className={sketch.truth} />}
            </SketchPaper>
          </div>
        );
      })}
    </>
  );
}

/** What a step asks to be drawn. */
export function drawOf({ steps }: PreparedLesson, id: string): PreparedDraw | undefined {
  const step = steps.find((one) => one.id === id);
  return step?.kind === 'predict' ? step.draw : undefined;
}
