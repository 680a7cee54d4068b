import { sampleAt } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { tenth } from '../axes/time-columns';
import type { OverlaidDive } from '../profile/overlaid-dive';
import type { ChaseScales } from './chase-scales';
import styles from './chase.module.css';

interface SecondMarksProps {
  dive: OverlaidDive;
  cursorS: number;
  scales: ChaseScales;
  /** Of the first dive's marks. */
  size: number;
}

/**
 * The sixteen compartments of a second dive at the same instant, as open squares around or beside the first dive's: told
 * apart from round marks and lozenges without colour.
 */
export function SecondMarks({ dive: { timeline, title }, cursorS, scales: { x, y, inner }, size }: SecondMarksProps) {
  const at = sampleAt(timeline, cursorS) * COMPARTMENTS;
  const side = tenth(size * 2.5);
  const squares = Array.from(timeline.compartments.nitrogenHalfTimeMin, (halfTimeMin, c) => {
    const tensionBar = timeline.nitrogenBar[at + c]! + timeline.heliumBar[at + c]!;
    return `M${tenth(x(halfTimeMin) - side / 2)},${tenth(y(tensionBar) - side / 2)}h${side}v${side}h${-side}Z`;
  });
  return (
    <>
      <path d={squares.join('')} className={styles.second} data-dive="second" />
      <text x={inner.width} y={-11} textAnchor="end" className={styles.secondName}>
        squares: {title}
      </text>
    </>
  );
}
