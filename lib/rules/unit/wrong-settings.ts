import type { Dive } from '../../dive/dive';
import type { Setup } from '../../dive/setup';
import { gasName, sameGas } from '../../physics/gas';
import { printAltitude } from '../../quantity/altitude';
import { sayDepth } from '../../quantity/depth';
import { printFactors, printPercent } from '../../quantity/percent';
import type { UnitSystem } from '../../quantity/unit-system';

/** What a unit is set to that differs from the dive, each in words that follow the unit's name: "believes 32%, not air". */
export function wrongSettings({ settings }: Dive, setup: Setup, system: UnitSystem): string[] {
  const wrong: string[] = [];
  if (setup.mode === 'gauge') wrong.push('is in gauge mode');
  if (setup.gas && !sameGas(setup.gas, settings.gas))
    wrong.push(`believes ${gasName(setup.gas)}, not ${gasName(settings.gas)}`);
  if (setup.altitudeM !== undefined && setup.altitudeM !== settings.altitudeM) {
    wrong.push(
      `is set to an altitude of ${printAltitude(setup.altitudeM, system)}, not ${printAltitude(settings.altitudeM, system)}`,
    );
  }
  if (setup.water && setup.water !== settings.water)
    wrong.push(`is set to ${setup.water} water, not ${settings.water} water`);
  const factors = setup.gradientFactors;
  const real = settings.gradientFactors;
  if (factors && (factors.low !== real.low || factors.high !== real.high)) {
    wrong.push(`goes by gradient factors ${printFactors(factors)}, not ${printFactors(real)}`);
  }
  const { depthOffsetM, depthScale } = setup;
  if (depthOffsetM !== 0)
    wrong.push(`reads ${sayDepth(Math.abs(depthOffsetM), system)} too ${depthOffsetM > 0 ? 'deep' : 'shallow'}`);
  if (depthScale !== 1) wrong.push(`reads ${printPercent(depthScale, 1)} of every depth`);
  for (const dive of setup.freshBeforeDives) wrong.push(`starts dive ${dive + 1} with fresh tissues`);
  return wrong;
}
