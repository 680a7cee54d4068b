import type { Ask, AskOf, Truth } from '@/lib/class/ask';
import type { Spread, SpreadOf } from '@/lib/class/spread';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { quantile } from '@/lib/quantity/quantile';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { rounded } from '../../parts/answers/rounded';
import { usePreferences } from '../../parts/preferences';
import { ProseLine } from '../../parts/prose/Prose';
import { CurvesPicture } from './CurvesPicture';
import styles from './shown.module.css';

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
  switch (ask.by) {
    case 'choice':
      return (
        <Bars
          labels={ask.options.map((option, i) =>
            optionsHtml?.[i] === undefined ? option : <ProseLine key={i} html={optionsHtml[i]} />,
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
      return <Dots ask={ask} spreads={spreads.filter((one) => one.by === 'number')} truth={truth} />;
    case 'draw':
      return (
        <CurvesPicture
          ask={ask}
          spreads={spreads.filter((one) => one.by === 'draw')}
          truth={truth?.by === 'draw' ? truth : undefined}
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
              {i === right && <b> ✓ the model says this</b>}
            </p>
            {mine.map((count, round) => (
              <div key={round} className={styles.barRow} data-round={round + 1}>
                {mine.length > 1 && <span className={styles.round}>{round === 0 ? 'first' : 'second'}</span>}
                <span className={styles.bar} aria-hidden="true">
                  <span style={{ inlineSize: `${(count / most) * 100}%` }} />
                </span>
                <output>
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

const LINE = { width: 720, edge: 36, row: 92, foot: 64 };
const DOT = 5;

/** A dot for each number on the axis of the reading, a row for each round; the engine's figure across all. */
function Dots({
  ask: { dimension },
  spreads,
  truth,
}: {
  ask: AskOf<'number'>;
  spreads: readonly SpreadOf<'number'>[];
  truth: Truth | undefined;
}) {
  const units = usePreferences((state) => state.units);
  const { unit, size } = answerUnit(dimension, units);
  const told = truth?.by === 'number' ? truth : undefined;
  const rows = spreads.map(({ values }) => values.map((value) => value / size));
  const all = rows.flat();
  const marks = told ? [(told.value - told.within) / size, (told.value + told.within) / size] : [];
  const low = Math.min(0, ...all, ...marks);
  const high = Math.max(1, ...all, ...marks) * 1.06;
  const x = (value: number) => LINE.edge + ((value - low) / (high - low)) * (LINE.width - 2 * LINE.edge);
  const height = rows.length * LINE.row + LINE.foot;
  const axisY = height - LINE.foot + 6;
  return (
    <figure className={styles.dots}>
      <svg viewBox={`0 0 ${LINE.width} ${height}`} aria-hidden="true">
        <path d={`M${LINE.edge},${axisY}H${LINE.width - LINE.edge}`} className={styles.surface} />
        {ticksOf(low, high).map((tick) => (
          <g key={tick} transform={`translate(${x(tick)},${axisY})`}>
            <path d="M0,0V6" className={styles.surface} />
            <text y={26} textAnchor="middle">
              {rounded(tick)}
            </text>
          </g>
        ))}
        <text x={LINE.width - LINE.edge} y={axisY + 50} textAnchor="end">
          {unit}
        </text>
        {told && (
          <g className={styles.arrives}>
            <rect
              x={x(marks[0]!)}
              width={Math.max(2, x(marks[1]!) - x(marks[0]!))}
              y={4}
              height={axisY - 4}
              className={styles.band}
            />
            <path d={`M${x(told.value / size)},4V${axisY}`} className={styles.truth} />
          </g>
        )}
        {rows.map((values, row) => (
          <g key={row}>
            {rows.length > 1 && (
              <text x={0} y={row * LINE.row + 14}>
                {row === 0 ? 'first' : 'second'}
              </text>
            )}
            {stacked(values, x).map(({ at, above }, i) => (
              <circle
                key={i}
                cx={at}
                cy={(row + 1) * LINE.row - DOT - 2 - above * Math.min(DOT * 2.1, (LINE.row - 24) / highest(values, x))}
                r={DOT}
                className={styles.dot}
                data-round={row + 1}
              />
            ))}
          </g>
        ))}
      </svg>
      <figcaption>
        {rows.map((values, row) => (
          <p key={row}>
            {rows.length > 1 && <b>{row === 0 ? 'First: ' : 'Second: '}</b>}
            {values.length === 0
              ? 'no answers'
              : `${values.length} ${values.length === 1 ? 'answer' : 'answers'}, from ${rounded(values[0]!)} to ${rounded(values.at(-1)!)} ${unit}, the middle one ${rounded(quantile(values, 0.5))} ${unit}`}
          </p>
        ))}
        {told && (
          <p className={styles.told}>
            The model says <b>{told.printed[units]}</b>.
          </p>
        )}
      </figcaption>
    </figure>
  );
}

/** Dots that would lie on one another, one above the other. */
function stacked(values: readonly number[], x: (value: number) => number): { at: number; above: number }[] {
  const taken = new Map<number, number>();
  return values.map((value) => {
    const place = Math.round(x(value) / (DOT * 2));
    const above = taken.get(place) ?? 0;
    taken.set(place, above + 1);
    return { at: place * DOT * 2, above };
  });
}

function highest(values: readonly number[], x: (value: number) => number): number {
  return Math.max(1, ...stacked(values, x).map(({ above }) => above));
}

/** Round numbers along an axis, some six. */
function ticksOf(low: number, high: number): number[] {
  const rough = (high - low) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= rough)!;
  const ticks: number[] = [];
  for (let at = Math.ceil(low / step - 1e-9) * step; at <= high; at += step) ticks.push(at);
  return ticks;
}
