import { spacedOut } from '../axes/spaced-out';
import { tenth } from '../axes/time-columns';
import type { CompartmentState } from '../compartment-states';
import type { ChaseScales } from './chase-scales';
import styles from './chase.module.css';

interface LineNamesProps {
  scales: Pick<ChaseScales, 'inner' | 'y' | 'narrow'>;
  states: readonly CompartmentState[];
  ambientBar: number;
  breathedBar: number;
}

/** What each line of the chase is, at its right end. */
export function LineNames({ scales: { inner, y, narrow }, states, ambientBar, breathedBar }: LineNamesProps) {
  const names = [
    { text: 'water', bar: ambientBar, className: styles.waterName },
    { text: 'gas breathed', bar: breathedBar, className: styles.gasName },
    { text: 'limit here', bar: states[15]!.limitNowBar, className: styles.limitName },
    {
      text: narrow ? 'surface limit' : 'limit at the surface',
      bar: states[15]!.limitAtSurfaceBar,
      className: styles.limitName,
    },
  ];
  const ends = names.map(({ bar }) => Math.max(0, y(bar)));
  const places = spacedOut(ends, 18, inner.height);
  return names.map(({ text, className }, index) => (
    // Measured anew where there is another width.
    <g key={text + inner.width}>
      <path
        d={`M${inner.width},${tenth(ends[index]!)}L${inner.width + 6},${tenth(places[index]!)}`}
        className={styles.nameTie}
      />
      <text ref={keptWithin} x={inner.width + 9} y={places[index]} dy="0.32em" className={className}>
        {text}
      </text>
    </g>
  ));
}

/** Draws a name longer than its room back over the picture: letters may be spaced or larger than they were meant. */
function keptWithin(text: SVGTextElement | null): (() => void) | undefined {
  if (!text || typeof ResizeObserver === 'undefined') return undefined;
  const observer = new ResizeObserver(() => {
    const over = text.getBoundingClientRect().right - text.ownerSVGElement!.getBoundingClientRect().right;
    text.setAttribute('dx', `${Math.min(0, Number(text.getAttribute('dx')) - over)}`);
  });
  observer.observe(text);
  return () => observer.disconnect();
}
