import { sampleAt } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { tenth } from '../axes/time-columns';
import type { OverlaidDive } from '../profile/overlaid-dive';
import type { ChaseScales } from './chase-scales';
import styles from './chase.module.css';

/** What the names of the axis and of a limit off the top take of the line over the plot, and a letter of it. */
const ABOVE_LEFT = 196;
const LETTER_WIDE = 7.7;

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
  const name = `squares: ${title}`;
  const fits = ABOVE_LEFT + name.length * LETTER_WIDE < inner.width;
  const side = tenth(size * 2.5);
  const squares = Array.from(timeline.compartments.nitrogenHalfTimeMin, (halfTimeMin, c) => {
    const tensionBar = timeline.nitrogenBar[at + c]! + timeline.heliumBar[at + c]!;
    return `M${tenth(x(halfTimeMin) - side / 2)},${tenth(y(tensionBar) - side / 2)}h${side}v${side}h${-side}Z`;
  });
  return (
    <>
      <path d={squares.join('')} className={styles.second} data-dive="second" />
      <text x={inner.width - (fits ? 0 : 4)} y={fits ? -11 : 16} textAnchor="end" className={styles.secondName}>
        {fits ? name : 'squares: second dive'}
      </text>
    </>
  );
}
