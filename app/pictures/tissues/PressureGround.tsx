'use client';

import { memo } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from '../scene';
import { printPercent } from '@/lib/quantity/percent';
import { pressureTicks, pressureUnit } from '../axes/pressure-axis';
import type { Tolerance } from './pressure-lines';
import type { PressureScales } from './pressure-scales';
import { depthTicks } from '../profile/profile-scales';
import { spacedOut } from '../axes/spaced-out';
import { tenth } from '../axes/time-columns';
import shared from '../pictures.module.css';
import styles from './pressure.module.css';
import { PressureAxis } from '../axes/PressureAxis';

export const Ground = memo(function Ground({
  scene,
  scales,
  units,
}: {
  scene: Scene;
  scales: PressureScales;
  units: UnitSystem;
}) {
  const { inner, x, y, margin } = scales;
  const { surfaceBar, barPerMetre } = scene.timeline;
  const deepestM = (x.domain()[1]! - surfaceBar) / barPerMetre / 1.04;
  return (
    <>
      <PressureAxis {...{ inner, margin, y, units }} of="gas in the compartment" above={30} />
      {pressureTicks(x, units, inner.width / 70).map(({ bar, text }) => (
        <g key={bar} transform={`translate(${tenth(x(bar))},${inner.height})`}>
          <line y2={5} className={shared.tick} />
          <text y={20} className={styles.axis} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {depthTicks(deepestM, units, Math.max(2, Math.floor(inner.width / 80))).map((depthM) => (
        <text
          key={depthM}
          x={tenth(x(surfaceBar + depthM * barPerMetre))}
          y={inner.height + 37}
          className={styles.axis}
          textAnchor="middle"
        >
          {depthM === 0 ? 'surface' : sayDepth(depthM, units)}
        </text>
      ))}
      <path d={`M${tenth(x(surfaceBar))},0V${inner.height}`} className={styles.surface} />
      <text x={inner.width / 2} y={inner.height + 55} className={styles.axis} textAnchor="middle">
        ambient pressure, {pressureUnit(units).name}
      </text>
      <path d={`M0,0V${inner.height}H${inner.width}`} className={styles.frame} />
    </>
  );
});

/** Names each line where it leaves the picture: above it, or at its right. */
export const LineNames = memo(function LineNames({
  scene,
  scales,
  tolerance,
  all,
}: {
  scene: Scene;
  scales: PressureScales;
  tolerance: Tolerance;
  all: boolean;
}) {
  const { inner, x, y } = scales;
  const [from, to] = x.domain() as [number, number];
  const highest = y.domain()[1]!;
  const { low, high } = scene.dive.settings.gradientFactors;
  const named = (text: string, at: (bar: number) => number, className: string | undefined) => {
    const start = at(from);
    const end = at(to);
    return end <= highest
      ? { text, className, top: undefined, right: y(end) }
      : { text, className, top: x(from + ((to - from) * (highest - start)) / (end - start)), right: undefined };
  };
  const names = [
    named('in balance', (bar) => bar, styles.balanceName),
    ...(all
      ? []
      : [
          named('limit', (bar) => tolerance.underGf(1, bar), styles.limitName),
          ...(high < 1 ? [named(printPercent(high), (bar) => tolerance.underGf(high, bar), styles.limitName)] : []),
          ...(low < high ? [named(printPercent(low), (bar) => tolerance.underGf(low, bar), styles.limitName)] : []),
        ]),
  ];
  const tops = names.filter((name) => name.top !== undefined);
  const rights = names.filter((name) => name.right !== undefined);
  const topPlaces = spacedOut(
    tops.map((name) => name.top!),
    42,
    inner.width + 60,
  );
  const rightPlaces = spacedOut(
    rights.map((name) => name.right!),
    18,
    inner.height,
  );
  return (
    <>
      {tops.map((name, index) => (
        <text key={name.text} x={tenth(topPlaces[index]!)} y={-8} textAnchor="middle" className={name.className}>
          {name.text}
        </text>
      ))}
      {rights.map((name, index) => (
        <text key={name.text} x={inner.width + 8} y={tenth(rightPlaces[index]!)} dy="0.32em" className={name.className}>
          {name.text}
        </text>
      ))}
      {all && (
        <text x={inner.width} y={-8} textAnchor="end" className={styles.limitName}>
          each one’s limit, {printPercent(high)}
        </text>
      )}
    </>
  );
});
