import type { ScaleLinear } from 'd3';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { stepsTo } from '@/lib/quantity/rounding';

/** The unit a pressure axis is marked in. */
export function pressureUnit(units: UnitSystem): {
  readonly name: string;
  readonly bar: number;
  readonly decimals: number;
} {
  return units === 'metric' ? { name: 'bar', bar: 1, decimals: 2 } : { name: 'psi', bar: BAR_PER_PSI, decimals: 1 };
}

/** Round pressures to mark on a scale of bar, with what to print beside each. */
export function pressureTicks(
  scale: ScaleLinear<number, number>,
  units: UnitSystem,
  about: number,
): { readonly bar: number; readonly text: string }[] {
  const { bar } = pressureUnit(units);
  const [low, high] = scale.domain() as [number, number];
  return scale
    .copy()
    .domain([low / bar, high / bar])
    .ticks(about)
    .map((value) => ({ bar: value * bar, text: String(value) }));
}

/** A pressure axis that starts at half a bar or lower, below everything it is to hold. */
export function floorBar(lowestBar: number): number {
  return Math.max(0, (stepsTo(lowestBar, 0.5) - 1) * 0.5);
}
