import { line, scaleLinear } from 'd3';
import { compartments } from '@/lib/tissue/coefficients';
import { haldane } from '@/lib/tissue/loading';
import { ChartFrame } from '../parts/ChartFrame';
import type { TableColumn } from '../parts/DataTable';
import { printPercent } from '@/lib/quantity/percent';
import styles from './HalfTimesPlate.module.css';

const spanMin = 120;
const pointsOnCurve = 49;
const labelHeight = 13;
const tableMin = [10, 30, 60, 120];

interface Filling {
  number: string;
  halfTimeMin: number;
  /** Share of the way to full, 0 to 1, after so many minutes at one depth. */
  filledAfter: (minutes: number) => number;
}

const set = compartments('C', '1b');
const fillings: Filling[] = Array.from(set.nitrogenHalfTimeMin, (halfTimeMin, index) => ({
  number: index === 0 ? '1b' : String(index + 1),
  halfTimeMin,
  filledAfter: (minutes) => haldane(0, 1, set.nitrogenK[index]!, minutes),
}));

const columns: readonly TableColumn<Filling>[] = [
  { heading: 'Compartment', cell: ({ number }) => number },
  { heading: 'Half-time', numeric: true, cell: ({ halfTimeMin }) => `${halfTimeMin} min` },
  ...tableMin.map((minutes) => ({
    heading: `After ${minutes} min`,
    numeric: true,
    cell: ({ filledAfter }: Filling) => printPercent(filledAfter(minutes)),
  })),
];

/** The idea the whole model rests on, drawn by the model's own arithmetic when the site is built. */
export function HalfTimesPlate() {
  return (
    <ChartFrame
      title="Sixteen half-times"
      sentence="Stay at one depth and each compartment fills by half of what is left in every half-time. The fastest is half full in 5 minutes; the slowest takes 635, so in two hours it has barely stirred."
      columns={columns}
      rows={fillings}
      source="Nitrogen half-times of ZH-L16, Bühlmann 1995"
    >
      <Picture width={640} height={400} className={styles.wide} />
      <Picture width={350} height={340} className={styles.narrow} />
    </ChartFrame>
  );
}

function Picture({ width, height, className }: { width: number; height: number; className: string | undefined }) {
  const x = scaleLinear([0, spanMin], [44, width - 58]);
  const y = scaleLinear([0, 1], [height - 46, 34]);
  const curve = line<number>(
    (minutes) => x(minutes),
    () => 0,
  ).digits(1);
  // Close together where the curves bend, and no closer than is seen: the page is sent with all of them.
  const minutes = Array.from({ length: pointsOnCurve }, (_, i) => spanMin * (i / (pointsOnCurve - 1)) ** 2);
  const [left, right] = x.range() as [number, number];
  const [bottom, top] = y.range() as [number, number];
  const labelled = fillings.toReversed().filter(hasRoom((share) => y(share)));
  return (
    <svg viewBox={`0 0 ${width} ${height}`} className={`${styles.plate} ${className}`} aria-hidden="true">
      {[0, 0.25, 0.5, 0.75, 1].map((share) => (
        <g key={share}>
          <path className={share === 0.5 ? styles.half : styles.grid} d={`M${left} ${y(share)}H${right}`} />
          <text x={left - 8} y={y(share)} className={styles.sideLabel}>
            {printPercent(share)}
          </text>
        </g>
      ))}
      {x.ticks(width > 500 ? 12 : 4).map((tick) => (
        <g key={tick}>
          <path className={styles.tick} d={`M${x(tick)} ${bottom}v5`} />
          <text x={x(tick)} y={bottom + 20} className={styles.footLabel}>
            {tick}
          </text>
        </g>
      ))}
      <text x={(left + right) / 2} y={bottom + 40} className={styles.footLabel}>
        minutes at one depth
      </text>
      {fillings.map(({ number, halfTimeMin, filledAfter }) => (
        <g key={number}>
          <path className={styles.curve} d={curve.y((minute) => y(filledAfter(minute)))(minutes) ?? ''} />
          {halfTimeMin <= spanMin && <circle className={styles.dot} cx={x(halfTimeMin)} cy={y(0.5)} r="4" />}
        </g>
      ))}
      <path className={styles.axis} d={`M${left} ${top}V${bottom}H${right}`} />
      {labelled.map(({ number, halfTimeMin, filledAfter }) => (
        <text key={number} x={right + 8} y={y(filledAfter(spanMin))} className={styles.endLabel}>
          {halfTimeMin}
        </text>
      ))}
      <text x={width - 4} y={top - 20} className={styles.sideLabel}>
        half-time, min
      </text>
    </svg>
  );
}

/** Going up from the slowest, keeps a half-time when its label stands clear of the one below; the curves bunch at both ends. */
function hasRoom(y: (share: number) => number): (filling: Filling) => boolean {
  let belowY = Infinity;
  return ({ filledAfter }) => {
    const here = y(filledAfter(spanMin));
    if (belowY - here < labelHeight || here - y(1) < labelHeight) return false;
    belowY = here;
    return true;
  };
}
