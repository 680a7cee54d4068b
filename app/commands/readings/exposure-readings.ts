import type { Settings } from '@/lib/dive/dive';
import type { Timeline } from '@/lib/dive/timeline';
import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';

/**
 * Oxygen, gas density and cylinders at every sample, and what happens to the supply. Fractions of the NOAA limits (1 is
 * the whole limit), g/L, bar on the gauge, litres at 1 bar.
 */
export function exposureReadings(timeline: Timeline, settings: Settings) {
  const oxygen = oxygenExposureOf(timeline);
  const densities = gasDensitiesOf(timeline);
  const supply = gasSupplyOf(timeline, settings);
  return {
    events: supply?.events ?? [],
    at: (sample: number) => ({
      oxygen: {
        pO2Bar: oxygen.pO2Bar[sample]!,
        singleFraction: oxygen.singleFraction[sample]!,
        dailyFraction: oxygen.dailyFraction[sample]!,
        pulmonaryUnits: oxygen.pulmonaryUnits[sample]!,
      },
      gasDensityGL: densities[sample]!,
      cylinders: (supply?.ideal.cylinders ?? []).map(({ cylinder, pressureBar, usedL }, index) => ({
        name: cylinder.name,
        pressureBar: pressureBar[sample]!,
        realPressureBar: supply!.real.cylinders[index]!.pressureBar[sample]!,
        usedL: usedL[sample]!,
      })),
    }),
  };
}
