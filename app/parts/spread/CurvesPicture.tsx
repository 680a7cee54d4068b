import type { SpreadOf } from '@/lib/class/spread';
import type { DrawAsked, Sketch } from '@/lib/lesson/questions/sketch';
import { sketchAxes, sketchPath, type SketchAxes } from '../answers/sketch-axes';
import { SketchPaper } from '../answers/SketchPaper';
import { usePreferences } from '../preferences';
import styles from './spread.module.css';

interface CurvesPictureProps {
  asked: DrawAsked;
  /** Round by round. */
  spreads: readonly Pick<SpreadOf<'draw'>, 'curves' | 'columns'>[];
  /** The engine's curve, once it is run over them. */
  truth: Sketch | undefined;
  sketches: readonly (readonly Sketch[])[] | undefined;
}

/** The curves of a class over each other, or half of them as a band where they are not at hand; the engine's across them. */
export function CurvesPicture({ asked, spreads, truth, sketches }: CurvesPictureProps) {
  const units = usePreferences((state) => state.units);
  const axes = sketchAxes(asked, units);
  return (
    <div className={styles.rounds}>
      {spreads.map(({ curves, columns }, round) => (
        <figure key={round} className={styles.curves}>
          <SketchPaper axes={axes} className={styles.paper} aria-hidden="true">
            {columns.length > 0 && <path d={bandPath(columns, axes)} className={styles.half} />}
            {sketches?.[round]?.map((sketch, i) => (
              <path key={i} d={sketchPath(sketch, axes)} className={styles.curve} />
            ))}
            {columns.length > 0 && (
              <path
                d={sketchPath(
                  columns.map(([timeS, , value]) => ({ timeS, value })),
                  axes,
                )}
                className={styles.middle}
              />
            )}
            {truth && <path d={sketchPath(truth, axes)} pathLength={1} className={styles.runs} />}
          </SketchPaper>
          <figcaption>
            {spreads.length > 1 && <b>{round === 0 ? 'First: ' : 'Second: '}</b>}
            {curves} {curves === 1 ? 'curve' : 'curves'} of {asked.noun}
            {columns.length > 0 && '; dashed: the middle of them, shaded: where half of them lie'}
            {truth && '; solid: what the model says'}.
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

function bandPath(columns: SpreadOf<'draw'>['columns'], axes: SketchAxes): string {
  const low = columns.map(([timeS, value]) => ({ timeS, value }));
  const high = columns.map(([timeS, , , value]) => ({ timeS, value }));
  return `${sketchPath(low, axes)}${sketchPath(high.reverse(), axes).replace('M', 'L')}Z`;
}
