import type { ReactNode } from 'react';
import { compartments } from '@/lib/tissue/coefficients';
import { limitBar, mValueBar } from '@/lib/tissue/limit';
import { haldane } from '@/lib/tissue/loading';
import { Rock } from '../pictures/axes/Rock';
import chase from '../pictures/chase/chase.module.css';
import shared from '../pictures/pictures.module.css';
import styles from './page.module.css';

const WIDTH = 300;
const HEIGHT = 190;
const LEFT = 34;
const FOOT = 150;
const TOP = 14;
const RIGHT = 290;

/** The two halves of the model in a picture each, before they are put in formulas. */
export function Sketches() {
  return (
    <div className={styles.sketches}>
      <Sketch
        title="A tissue loads by halves"
        says="In each half-time it closes half of what parts it from the gas breathed."
      >
        <Loading />
      </Sketch>
      <Sketch
        title="What it may hold grows with the pressure around it"
        says="Compartment 5. Past the rust line the model says stop; a gradient factor of 70% says so sooner."
      >
        <Limits />
      </Sketch>
    </div>
  );
}

function Sketch({ title, says, children }: { title: string; says: string; children: ReactNode }) {
  return (
    <figure>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
        {children}
        <path d={`M${LEFT},${TOP}V${FOOT}H${RIGHT}`} className={shared.edge} />
      </svg>
      <figcaption>
        <b>{title}.</b> {says}
      </figcaption>
    </figure>
  );
}

const HALF_TIMES = [1, 2, 3, 4];
const line = (places: readonly (readonly [number, number])[]) =>
  `M${places.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}`;

function Loading() {
  const x = (halfTimes: number) => LEFT + (halfTimes / 4.4) * (RIGHT - LEFT);
  const y = (share: number) => FOOT - share * (FOOT - TOP - 18);
  const held = (halfTimes: number) => haldane(0, 1, Math.LN2, halfTimes);
  const curve = Array.from({ length: 45 }, (_, i) => [x(i / 10), y(held(i / 10))] as const);
  return (
    <>
      <path
        d={line([
          [LEFT, y(1)],
          [RIGHT, y(1)],
        ])}
        className={chase.breathed}
      />
      <text x={RIGHT} y={y(1) - 7} textAnchor="end" className={shared.axis}>
        gas breathed
      </text>
      <path d={line(curve)} className={shared.profile} />
      {HALF_TIMES.map((count) => (
        <g key={count}>
          <path d={`M${x(count)},${FOOT}V${y(held(count))}`} className={shared.tick} />
          <circle cx={x(count)} cy={y(held(count))} r={4} className={styles.dot} />
          <text x={x(count)} y={y(held(count)) + 20} dx={6} className={shared.axis}>
            {Math.round(held(count) * 100)}%
          </text>
          <text x={x(count)} y={FOOT + 17} textAnchor="middle" className={shared.axis}>
            {count}
          </text>
        </g>
      ))}
      <text x={RIGHT} y={FOOT + 35} textAnchor="end" className={shared.axis}>
        half-times
      </text>
    </>
  );
}

const MOST_BAR = 4;

function Limits() {
  const { nitrogenA, nitrogenB } = compartments('C', '1b');
  const [a, b] = [nitrogenA[4]!, nitrogenB[4]!];
  const x = (bar: number) => LEFT + (bar / MOST_BAR) * (RIGHT - LEFT);
  const y = (bar: number) => FOOT - (bar / 6.4) * (FOOT - TOP);
  const ends = (held: (ambientBar: number) => number) =>
    line([0, MOST_BAR].map((bar) => [x(bar), y(held(bar))] as const));
  const limit = (bar: number) => mValueBar(a, b, bar);
  return (
    <>
      <Rock id="sketch-rock" />
      <path d={`${ends(limit)}V${TOP}H${LEFT}Z`} fill="url(#sketch-rock)" />
      <path d={ends(limit)} className={shared.ceiling} />
      <path d={ends((bar) => limitBar(a, b, 0.7, bar))} className={shared.ceilingLow} />
      <path d={ends((bar) => bar)} className={shared.profile} />
      <text x={x(2.9)} y={y(limit(2.9)) - 10} textAnchor="end" className={styles.limit}>
        limit
      </text>
      <text x={x(3.9)} y={y(1.9)} textAnchor="end" className={shared.axis}>
        in balance
      </text>
      {[0, 1, 2, 3, 4].map((bar) => (
        <text key={bar} x={x(bar)} y={FOOT + 17} textAnchor="middle" className={shared.axis}>
          {bar}
        </text>
      ))}
      {[2, 4, 6].map((bar) => (
        <text key={bar} x={LEFT - 7} y={y(bar)} dy="0.34em" textAnchor="end" className={shared.axis}>
          {bar}
        </text>
      ))}
      <text x={RIGHT} y={FOOT + 35} textAnchor="end" className={shared.axis}>
        around it, bar; upward: held, bar
      </text>
    </>
  );
}
