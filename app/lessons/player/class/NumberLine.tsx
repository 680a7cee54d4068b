import { rounded } from '../../../parts/answers/rounded';
import styles from './number-line.module.css';

interface NumberLineProps {
  given: readonly number[];
  answer: number;
  /** How far off still counts. */
  within: number;
  unit: string;
  /** The true answer as it is read. */
  printed: string;
}

const WIDTH = 640;
const HEIGHT = 92;
const EDGE = 40;
const LINE_Y = 50;

/** Answers on a line with the true one, and the width that counts. It accompanies a sentence that says the same. */
export function NumberLine({ given, answer, within, unit, printed }: NumberLineProps) {
  const all = [...given, answer - within, answer + within];
  const low = Math.min(...all, 0);
  const high = Math.max(...all, answer * 1.3) * 1.05;
  const x = (value: number) => EDGE + ((value - low) / (high - low || 1)) * (WIDTH - 2 * EDGE);
  const stacked = new Map<number, number>();
  return (
    <svg className={styles.numberLine} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <line x1={EDGE} x2={WIDTH - EDGE} y1={LINE_Y} y2={LINE_Y} className={styles.lineInk} />
      {low === 0 && (
        <text x={EDGE} y={LINE_Y + 20} textAnchor="middle" className={styles.lineEnd}>
          0
        </text>
      )}
      <rect
        x={x(answer - within)}
        width={Math.max(2, x(answer + within) - x(answer - within))}
        y={LINE_Y - 7}
        height={14}
        className={styles.lineBand}
      />
      <g transform={`translate(${x(answer)},${LINE_Y})`}>
        <path d="M0,-14V14" className={styles.lineTruth} />
        <text y={34} textAnchor="middle" className={styles.lineText}>
          {printed}
        </text>
      </g>
      {given.map((value, index) => {
        const place = Math.round(x(value));
        const above = stacked.get(place) ?? 0;
        stacked.set(place, above + 1);
        return (
          <g key={index} transform={`translate(${place},${LINE_Y - 12 - above * 11})`}>
            <path d="M0,5L-5,-4H5Z" className={styles.lineGiven} />
            {given.length === 1 && (
              <text y={-10} textAnchor="middle" className={styles.lineSaid}>
                you: {rounded(value)} {unit}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
