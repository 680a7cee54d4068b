import type { Ask, Truth } from '@/lib/class/ask';
import type { Spread } from '@/lib/class/spread';
import { inUnits } from '@/lib/class/words';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { usePreferences } from '../preferences';
import { ProseLine } from '../prose/Prose';
import { drawAskedOf } from './axes-asked';
import { CurvesPicture } from './CurvesPicture';
import { Dots } from './Dots';
import styles from './spread.module.css';

interface SpreadPictureProps {
  ask: Ask;
  /** Round by round. */
  spreads: readonly Spread[];
  /** Once it is run over them. */
  truth: Truth | undefined;
  /** The options as set in the lesson; otherwise they stand in plain words. */
  optionsHtml: readonly string[] | undefined;
  /** Every curve of each round, where they are at hand. */
  sketches?: readonly (readonly Sketch[])[] | undefined;
}

/** How the answers of a class lie, round beside round, and what the engine says over them. */
export function SpreadPicture({ ask, spreads, truth, optionsHtml, sketches }: SpreadPictureProps) {
  const units = usePreferences((state) => state.units);
  switch (ask.by) {
    case 'choice':
      return (
        <Bars
          labels={ask.options.map((option, i) =>
            optionsHtml?.[i] === undefined ? inUnits(option, units) : <ProseLine key={i} html={optionsHtml[i]} />,
          )}
          counts={countsOf(spreads)}
          right={truth?.by === 'choice' ? truth.right : undefined}
        />
      );
    case 'leader':
      return (
        <Bars
          labels={Array.from({ length: 16 }, (_, i) => `Compartment ${i + 1}`)}
          counts={countsOf(spreads)}
          right={truth?.by === 'leader' ? truth.compartment - 1 : undefined}
          onlyGiven
        />
      );
    case 'number':
      return (
        <Dots
          dimension={ask.dimension}
          rounds={spreads.flatMap((one) => (one.by === 'number' ? [one.values] : []))}
          truth={truth?.by === 'number' ? truth : undefined}
        />
      );
    case 'draw':
      return (
        <CurvesPicture
          asked={drawAskedOf(ask)}
          spreads={spreads.filter((one) => one.by === 'draw')}
          truth={truth?.by === 'draw' ? truth.curve : undefined}
          sketches={sketches}
        />
      );
  }
}

function countsOf(spreads: readonly Spread[]): number[][] {
  return spreads.flatMap((one) => (one.by === 'choice' || one.by === 'leader' ? [one.counts] : []));
}

/** A bar for each answer, one under the other for each round. */
function Bars({
  labels,
  counts,
  right,
  onlyGiven = false,
}: {
  labels: readonly React.ReactNode[];
  counts: readonly (readonly number[])[];
  right: number | undefined;
  onlyGiven?: boolean;
}) {
  const most = Math.max(1, ...counts.flat());
  return (
    <ol className={styles.bars} data-plain={onlyGiven}>
      {labels.map((label, i) => {
        const mine = counts.map((round) => round[i] ?? 0);
        if (onlyGiven && i !== right && mine.every((count) => count === 0)) return null;
        return (
          <li key={i} data-right={i === right}>
            <p>
              {label}
              {i === right && <b> ✓ that is the answer</b>}
            </p>
            {mine.map((count, round) => (
              <div key={round} className={styles.barRow} data-round={round + 1}>
                {mine.length > 1 && <span className={styles.round}>{round === 0 ? 'first' : 'second'}</span>}
                <span className={styles.bar} aria-hidden="true">
                  <span style={{ inlineSize: `${(count / most) * 100}%` }} />
                </span>
                <output aria-live="off">
                  {count}
                  <span className="spoken"> {count === 1 ? 'answer' : 'answers'}</span>
                </output>
              </div>
            ))}
          </li>
        );
      })}
    </ol>
  );
}
