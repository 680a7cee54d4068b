import type { TruthOf } from '@/lib/class/ask';
import type { Dimension } from '@/lib/lesson/expression/dimension';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { quantile } from '@/lib/quantity/quantile';
import { rounded } from '../answers/rounded';
import room from '../drawn-room.module.css';
import { usePreferences } from '../preferences';
import styles from './spread.module.css';

interface DotsProps {
  dimension: Dimension;
  /** Round by round, in rising order, in the unit of expressions. */
  rounds: readonly (readonly number[])[];
  truth: Pick<TruthOf<'number'>, 'value' | 'within' | 'printed'> | undefined;
}

const LINE = { width: 720, edge: 36, head: 34, row: 92, foot: 80 };
const DOT = 5;

/** A dot for each number on the axis of the reading, a row for each round; the engine's figure across all. */
export function Dots({ dimension, rounds, truth }: DotsProps) {
  const units = usePreferences((state) => state.units);
  const { unit, size } = answerUnit(dimension, units);
  const spaced = unit === '' ? '' : ` ${unit}`;
  const rows = rounds.map((values) => values.map((value) => value / size));
  const all = rows.flat();
  const marks = truth ? [(truth.value - truth.within) / size, (truth.value + truth.within) / size] : [];
  const shown = tame(all);
  const low = Math.min(0, ...shown, ...marks);
  const high = Math.max(1, ...shown, ...marks) * 1.06;
  const x = (value: number) =>
    LINE.edge + ((Math.min(Math.max(value, low), high) - low) / (high - low)) * (LINE.width - 2 * LINE.edge);
  const beyond = (values: readonly number[]) => values.filter((value) => value < low || value > high).length;
  const height = LINE.head + rows.length * LINE.row + LINE.foot;
  const axisY = height - LINE.foot + 6;
  return (
    <figure className={`${room.room} ${styles.dots}`}>
      <svg viewBox={`0 0 ${LINE.width} ${height}`} aria-hidden="true">
        <path d={`M${LINE.edge},${axisY}H${LINE.width - LINE.edge}`} className={styles.surface} />
        {ticksOf(low, high).map((tick) => (
          <g key={tick} transform={`translate(${x(tick)},${axisY})`}>
            <path d="M0,0V6" className={styles.surface} />
            <text y={28} textAnchor="middle">
              {rounded(tick)}
            </text>
          </g>
        ))}
        <text x={LINE.width - LINE.edge} y={axisY + 64} textAnchor="end">
          {unit}
        </text>
        {truth && (
          <g className={styles.arrives}>
            <rect
              x={x(marks[0]!)}
              width={Math.max(2, x(marks[1]!) - x(marks[0]!))}
              y={4}
              height={axisY - 4}
              className={styles.band}
            />
            <path d={`M${x(truth.value / size)},4V${axisY}`} className={styles.truth} />
            <text
              x={x(truth.value / size) + (truth.value / size > (low + high) / 2 ? -10 : 10)}
              y={26}
              textAnchor={truth.value / size > (low + high) / 2 ? 'end' : 'start'}
              className={styles.model}
            >
              model: {truth.printed[units]}
            </text>
          </g>
        )}
        {rows.map((values, row) => (
          <g key={row}>
            {rows.length > 1 && (
              <text x={0} y={LINE.head + row * LINE.row + 14}>
                {row === 0 ? 'first' : 'second'}
              </text>
            )}
            {stacked(values, x).map(({ at, above }, i) => (
              <circle
                key={i}
                cx={at}
                cy={
                  LINE.head +
                  (row + 1) * LINE.row -
                  DOT -
                  2 -
                  above * Math.min(DOT * 2.1, (LINE.row - 24) / highest(values, x))
                }
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
              : `${values.length} ${values.length === 1 ? 'answer' : 'answers'}, from ${rounded(values[0]!)} to ${rounded(values.at(-1)!)}${spaced}, the middle one ${rounded(quantile(values, 0.5))}${spaced}`}
            {beyond(values) > 0 && `; ${beyond(values)} of them beyond the picture, drawn at its edge`}
          </p>
        ))}
        {truth && (
          <p className={styles.told}>
            The model says <b>{truth.printed[units]}</b>.
          </p>
        )}
      </figcaption>
    </figure>
  );
}

/** So many times what most answer is as far as the picture goes: one wild number would press all others together. */
const WILD = 4;

/** The numbers an axis is made for. */
function tame(values: readonly number[]): number[] {
  const sizes = values.map(Math.abs).sort((one, other) => one - other);
  const usual = quantile(sizes, 0.75) || sizes.find((size) => size > 0);
  return values.filter((value) => Math.abs(value) <= WILD * (usual ?? 0));
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
