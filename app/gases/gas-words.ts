import type { GasAtDepth } from '@/lib/exposure/gas-comparison';
import { HIGHEST_DENSITY_GL, RECOMMENDED_DENSITY_GL } from '@/lib/exposure/gas-density';
import { gasName } from '@/lib/physics/gas';
import { RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { sayDepth } from '@/lib/quantity/depth';
import { fixed } from '@/lib/quantity/number';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { partsAs } from '@/lib/sayings/measures';
import { capital } from '@/lib/quantity/capital';

/** One property of gases at a depth, as a row of a table. */
export interface GasRow {
  readonly label: string;
  say(gas: GasAtDepth, units: UnitSystem): string;
}

/** What is told of gases beside each other, in the order a student meets it. */
export const GAS_ROWS: readonly GasRow[] = [
  { label: 'Oxygen, bar', say: ({ partial }) => `${fixed(partial.oxygenBar, 2)}${oxygenRemark(partial.oxygenBar)}` },
  { label: 'Nitrogen, bar', say: ({ partial }) => fixed(partial.nitrogenBar, 2) },
  { label: 'Helium, bar', say: ({ partial }) => fixed(partial.heliumBar, 2) },
  { label: 'No-stop time, min', say: ({ noStopMin }, units) => partsAs('noStopMin', noStopMin, units)[0] },
  {
    label: `Maximum operating depth, at ${WORKING_PO2_BAR} bar`,
    say: ({ workingModM }, units) => depthOrNone(workingModM, units),
  },
  {
    label: `Maximum operating depth, at ${RESTING_PO2_BAR} bar`,
    say: ({ restingModM }, units) => depthOrNone(restingModM, units),
  },
  {
    label: 'Too little oxygen above',
    say: ({ hypoxicAboveM }, units) => (hypoxicAboveM > 0 ? sayDepth(hypoxicAboveM, units) : 'enough at the surface'),
  },
  {
    label: 'Equivalent air depth',
    say: ({ equivalentAirDepthM }, units) =>
      equivalentAirDepthM === null ? 'not with helium' : depthOrSurface(equivalentAirDepthM, units),
  },
  {
    label: 'Equivalent narcotic depth',
    say: ({ equivalentNarcoticDepthM }, units) => depthOrSurface(equivalentNarcoticDepthM, units),
  },
  { label: 'Density, g/L', say: ({ densityGL }) => `${fixed(densityGL, 1)}${densityRemark(densityGL)}` },
  {
    label: 'Longest single exposure, min',
    say: ({ singleLimitMin }) => (singleLimitMin > 24 * 60 ? 'no limit' : fixed(Math.floor(singleLimitMin + 1e-9), 0)),
  },
  { label: 'Lung units a minute', say: ({ pulmonaryUnitsPerMin }) => fixed(pulmonaryUnitsPerMin, 2) },
];

function oxygenRemark(oxygenBar: number): string {
  if (oxygenBar > RESTING_PO2_BAR) return `, over ${RESTING_PO2_BAR}`;
  return oxygenBar > WORKING_PO2_BAR ? `, over ${WORKING_PO2_BAR}` : '';
}

function densityRemark(densityGL: number): string {
  if (densityGL > HIGHEST_DENSITY_GL) return `, over ${HIGHEST_DENSITY_GL}`;
  return densityGL > RECOMMENDED_DENSITY_GL ? `, over ${RECOMMENDED_DENSITY_GL}` : '';
}

function depthOrNone(depthM: number, units: UnitSystem): string {
  if (depthM === Infinity) return 'no limit';
  return depthM < 0 ? 'not even at the surface' : sayDepth(depthM, units);
}

function depthOrSurface(depthM: number, units: UnitSystem): string {
  return depthM < 0 ? 'less than at the surface' : sayDepth(depthM, units);
}

/** What a gas buys and costs against another at the same depth, in a sentence. */
export function sayAgainst(other: GasAtDepth, base: GasAtDepth, units: UnitSystem): string {
  const minutes = Math.floor(Math.min(other.noStopMin, 100) + 1e-9) - Math.floor(Math.min(base.noStopMin, 100) + 1e-9);
  const time =
    minutes === 0 ? 'the same no-stop time' : `${Math.abs(minutes)} min ${minutes > 0 ? 'more' : 'less'} without stops`;
  const oxygen = other.partial.oxygenBar - base.partial.oxygenBar;
  const narcosisM = other.equivalentNarcoticDepthM - base.equivalentNarcoticDepthM;
  const density = other.densityGL - base.densityGL;
  const parts = [
    `oxygen ${oxygen >= 0 ? 'higher' : 'lower'} by ${fixed(Math.abs(oxygen), 2)} bar`,
    Math.abs(narcosisM) < 0.05
      ? 'the same narcosis'
      : `narcosis as if ${sayDepth(Math.abs(narcosisM), units)} ${narcosisM < 0 ? 'shallower' : 'deeper'}`,
    `gas ${fixed(Math.abs(density), 1)} g/L ${density <= 0 ? 'lighter' : 'heavier'} to breathe`,
  ];
  const passed =
    other.partial.oxygenBar > WORKING_PO2_BAR
      ? ` Its oxygen is over ${other.partial.oxygenBar > RESTING_PO2_BAR ? RESTING_PO2_BAR : WORKING_PO2_BAR} bar here: it is not for this depth.`
      : '';
  return `${capital(gasName(other.gas))} against ${gasName(base.gas)}: ${time}; ${parts.join(', ')}.${passed}`;
}
