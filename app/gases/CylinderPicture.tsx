'use client';

import { line, scaleLinear } from 'd3';
import type { Gas } from '@/lib/physics/gas';
import { absoluteOfGauge, IDEAL_GAS, REAL_GAS, type GasLaw } from '@/lib/exposure/gas-law';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import { printVolume } from '@/lib/quantity/volume';
import { Levels } from '../pictures/axes/Levels';
import { Plate } from '../pictures/axes/Plate';
import { usePreferences } from '../parts/preferences';
import styles from './pictures.module.css';

interface CylinderPictureProps {
  waterL: number;
  gas: Gas;
  startBar: number;
  width: number;
}

const HEIGHT = 280;
const MARGIN = { top: 14, right: 20, bottom: 34, left: 74 };
export const MOST_SHOWN_BAR = 300;

/** What a cylinder holds at each gauge pressure, as Boyle's law has it and as the gas really is. */
export function CylinderPicture({ waterL, gas, startBar, width }: CylinderPictureProps) {
  const units = usePreferences((state) => state.units);
  const inner = { width: width - MARGIN.left - MARGIN.right, height: HEIGHT - MARGIN.top - MARGIN.bottom };
  const vessel = { waterL, gas };
  const most = Math.max(MOST_SHOWN_BAR, startBar);
  const x = scaleLinear([0, most], [0, inner.width]);
  const held = (law: GasLaw, bar: number) => law.contentL(vessel, absoluteOfGauge(bar));
  const y = scaleLinear([0, Math.max(held(IDEAL_GAS, most), held(REAL_GAS, most)) * 1.04], [inner.height, 0]);
  const steps = Array.from({ length: 61 }, (_, i) => (most * i) / 60);
  const path = (law: GasLaw) => line<number>(x, (bar) => y(held(law, bar)))(steps) ?? '';
  return (
    <Plate width={width} height={HEIGHT} margin={MARGIN}>
      <Levels
        width={inner.width}
        levels={y.ticks(5).map((litres) => ({ y: y(litres), text: printVolume(litres, units) }))}
      />
      {x.ticks(width < 480 ? 3 : 6).map((bar) => (
        <text key={bar} x={x(bar)} y={inner.height + 22} textAnchor="middle" className={styles.axis}>
          {printCylinderPressure(bar, units)}
        </text>
      ))}
      <path d={path(IDEAL_GAS)} className={styles.ideal} />
      <path d={path(REAL_GAS)} className={styles.real} />
      <line
        x1={x(startBar)}
        x2={x(startBar)}
        y1={inner.height}
        y2={Math.min(y(held(IDEAL_GAS, startBar)), y(held(REAL_GAS, startBar)))}
        className={styles.here}
      />
      <circle cx={x(startBar)} cy={y(held(IDEAL_GAS, startBar))} r={5} className={styles.openPoint} />
      <circle cx={x(startBar)} cy={y(held(REAL_GAS, startBar))} r={5} className={styles.point} />
      <path d={`M0,0V${inner.height}H${inner.width}`} className={styles.outline} />
    </Plate>
  );
}
