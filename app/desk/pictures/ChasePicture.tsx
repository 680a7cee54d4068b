'use client';

import { line, max, scaleLinear, scaleLog } from 'd3';
import { useMemo, useState } from 'react';
import { breathedAt } from '@/lib/ascent/breathed';
import { coefficientsOf, gradientFactorAt, inertBarOf } from '@/lib/ascent/ceiling';
import { loadAt } from '@/lib/ascent/figures';
import { gasAt } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { limitBar } from '@/lib/tissue/limit';
import type { PictureProps } from './picture-props';
import type { Scene } from '../scene';
import styles from './pictures.module.css';

const MARGIN = { top: 14, right: 118, bottom: 40, left: 46 };

/** One compartment in the chase: where it is and what it tolerates, bar. */
export interface Runner {
  readonly number: number;
  readonly halfTimeMin: number;
  readonly tensionBar: number;
  /** Tolerated at the present depth and at the surface, gradient factors counted. */
  readonly limitNowBar: number;
  readonly limitAtSurfaceBar: number;
}

/** The sixteen compartments at one sample. */
export function runnersAt({ timeline, figures, dive }: Scene, sample: number): Runner[] {
  const load = loadAt(timeline, sample);
  const { gradientFactors } = dive.settings;
  const gfNow = gradientFactorAt(timeline.depthM[sample]!, figures.firstStopM[sample]!, gradientFactors);
  return Array.from({ length: COMPARTMENTS }, (_, c) => {
    const { a, b } = coefficientsOf(load, c);
    return {
      number: c + 1,
      halfTimeMin: timeline.compartments.nitrogenHalfTimeMin[c]!,
      tensionBar: inertBarOf(load, c),
      limitNowBar: limitBar(a, b, gfNow, timeline.ambientBar[sample]!),
      limitAtSurfaceBar: limitBar(a, b, gradientFactors.high, timeline.surfaceBar),
    };
  });
}

/**
 * The chase: compartments along a half-time axis, pressure upward. Sixteen marks run after the line of the gas breathed,
 * under the lines of what each tolerates now and at the surface.
 */
export function ChasePicture({ scene, sample, width, height }: PictureProps) {
  const { timeline, figures } = scene;
  const [pointed, setPointed] = useState<number>();
  const inner = { width: width - MARGIN.left - MARGIN.right, height: height - MARGIN.top - MARGIN.bottom };
  const halfTimes = timeline.compartments.nitrogenHalfTimeMin;
  const x = useMemo(() => scaleLog([halfTimes[0]! * 0.8, halfTimes[15]! * 1.2], [0, inner.width]), [halfTimes, inner.width]);
  const y = useMemo(() => {
    const deepestBar = max(timeline.ambientBar) ?? 1;
    return scaleLinear([0, Math.max(3.4, deepestBar * 1.04)], [inner.height, 0]);
  }, [timeline, inner.height]);
  const runners = runnersAt(scene, sample);
  const ambientBar = timeline.ambientBar[sample]!;
  const breathed = breathedAt(timeline, gasAt(timeline, sample), ambientBar);
  const breathedBar = breathed.nitrogenBar + breathed.heliumBar;
  const acrossBar = (pick: (runner: Runner) => number) =>
    line<Runner>((runner) => x(runner.halfTimeMin), (runner) => y(pick(runner))).digits(1)(runners) ?? '';
  const leader = figures.ceilingLeader[sample]! || figures.noStopLeader[sample]!;
  const told = runners.find((runner) => runner.number === (pointed ?? leader));
  const labels = spread(
    [
      { text: 'water', y: y(ambientBar), className: styles.waterLabel },
      { text: 'gas breathed', y: y(breathedBar), className: styles.gasLabel },
      { text: 'limit now', y: y(Math.min(runners[15]!.limitNowBar, y.domain()[1]!)), className: styles.limitLabel },
      { text: 'limit at surface', y: y(runners[15]!.limitAtSurfaceBar), className: styles.limitLabel },
    ],
    15,
    inner.height,
  );

  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} className={styles.picture} aria-hidden="true">
      <clipPath id="chase-frame">
        <rect width={inner.width} height={inner.height} />
      </clipPath>
      <g transform={`translate(${MARGIN.left},${MARGIN.top})`}>
        {y.ticks(5).map((bar) => (
          <g key={bar} transform={`translate(0,${y(bar)})`}>
            <line x2={inner.width} className={styles.grid} />
            <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
              {bar}
            </text>
          </g>
        ))}
        <text x={-MARGIN.left + 4} y={-2} className={styles.axis}>
          bar
        </text>
        {[5, 10, 20, 40, 80, 160, 320, 640].map((minutes) => (
          <g key={minutes} transform={`translate(${x(minutes)},${inner.height})`}>
            <line y2={5} className={styles.tick} />
            <text y={18} className={styles.axis} textAnchor="middle">
              {minutes}
            </text>
          </g>
        ))}
        <text x={inner.width / 2} y={inner.height + 35} className={styles.axis} textAnchor="middle">
          half-time, min
        </text>
        <g clipPath="url(#chase-frame)">
          <path d={acrossBar((runner) => runner.limitNowBar)} className={styles.limitNow} />
          <path d={acrossBar((runner) => runner.limitAtSurfaceBar)} className={styles.limitSurface} />
          <line x2={inner.width} y1={y(ambientBar)} y2={y(ambientBar)} className={styles.water} />
          <line x2={inner.width} y1={y(breathedBar)} y2={y(breathedBar)} className={styles.breathed} />
          {runners.map((runner) => (
            <line
              key={runner.number}
              x1={x(runner.halfTimeMin)}
              x2={x(runner.halfTimeMin)}
              y1={y(breathedBar)}
              y2={y(runner.tensionBar)}
              className={styles.leash}
            />
          ))}
        </g>
        {runners.map((runner) => (
          <RunnerMark
            key={runner.number}
            runner={runner}
            x={x(runner.halfTimeMin)}
            y={y(runner.tensionBar)}
            leads={runner.number === leader}
            onPoint={setPointed}
          />
        ))}
        {labels.map((label) => (
          <text key={label.text} x={inner.width + 8} y={label.y} dy="0.32em" className={label.className}>
            {label.text}
          </text>
        ))}
        {told && (
          <text x={inner.width} y={2} textAnchor="end" className={styles.told}>
            {pointed ? '' : 'leading: '}compartment {told.number}, {told.halfTimeMin} min: {told.tensionBar.toFixed(2)} of{' '}
            {told.limitAtSurfaceBar.toFixed(2)} bar
          </text>
        )}
      </g>
    </svg>
  );
}

/** A round mark while the surface would be tolerated, a lozenge once it would not. */
function RunnerMark(props: { runner: Runner; x: number; y: number; leads: boolean; onPoint: (number: number | undefined) => void }) {
  const { runner, x, y, leads, onPoint } = props;
  const over = runner.tensionBar > runner.limitAtSurfaceBar;
  const size = leads ? 9 : 6.5;
  return (
    <g
      transform={`translate(${x},${y})`}
      className={over ? styles.runnerOver : styles.runner}
      onPointerEnter={() => onPoint(runner.number)}
      onPointerLeave={() => onPoint(undefined)}
    >
      <circle r={14} className={styles.hit} />
      {over ? <path d={`M0,${-size * 1.25}L${size * 1.1},0L0,${size * 1.25}L${-size * 1.1},0Z`} /> : <circle r={size} />}
      {leads && (
        <text y={-size - 5} textAnchor="middle" className={styles.runnerNumber}>
          {runner.number}
        </text>
      )}
    </g>
  );
}

/** Moves labels apart that would be printed over one another, keeping their order. */
function spread<Label extends { y: number }>(labels: Label[], gap: number, height: number): Label[] {
  const sorted = [...labels].sort((one, other) => one.y - other.y);
  sorted.forEach((label, index) => {
    const above = sorted[index - 1];
    label.y = Math.max(label.y, above ? above.y + gap : 0);
  });
  for (let index = sorted.length - 1, roof = height; index >= 0; index -= 1, roof -= gap) {
    sorted[index]!.y = Math.min(sorted[index]!.y, roof);
    roof = Math.min(roof, sorted[index]!.y);
  }
  return sorted;
}
