import type { EventVoice } from './event-lane';
import styles from './event-lane.module.css';

const HEIGHT = 18;

/** A number in the shape of whoever says so, about its middle: a square for the model, round for a rule, six-sided for the gas that is left. */
export function EventMark({ voice, label, width = HEIGHT }: { voice: EventVoice; label: string; width?: number }) {
  const [x, y] = [-width / 2, -HEIGHT / 2];
  return (
    <g className={styles[voice]}>
      {voice === 'bySupply' ? (
        <path d={`M${x},0L${x + 5},${y}H${-x - 5}L${-x},0L${-x - 5},${-y}H${x + 5}Z`} />
      ) : (
        <rect x={x} y={y} width={width} height={HEIGHT} rx={voice === 'byRule' ? HEIGHT / 2 : 0} />
      )}
      <text dy="0.35em" textAnchor="middle">
        {label}
      </text>
    </g>
  );
}
