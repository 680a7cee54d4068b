import { breathedAt } from '../ascent/breathed';
import { noStop } from '../ascent/no-stop';
import { startingTissues } from '../dive/start';
import type { Settings } from '../dive/dive';
import { atmosphereBar } from '../physics/atmosphere';
import type { Gas } from '../physics/gas';
import { RESTING_PO2_BAR, WORKING_PO2_BAR } from '../physics/oxygen-limits';
import { barPerMetre } from '../physics/water';
import { lungOffsetBar } from '../tissue/alveolar';
import { compartments } from '../tissue/coefficients';
import {
  ambientBarAt,
  equivalentAirDepthM,
  equivalentNarcoticDepthM,
  gasModM,
  hypoxicAboveM,
  partialPressures,
  type Narcotic,
  type PartialPressures,
} from './gas-depths';
import { gasDensityGL } from './gas-density';
import { pulmonaryRate, singleLimitMin } from './oxygen-rates';

/** What one gas costs and buys at one depth. Depths in m, pressures in bar, times in min. */
export interface GasAtDepth {
  readonly gas: Gas;
  readonly depthM: number;
  readonly partial: PartialPressures;
  /** Minutes without stops for a diver who arrives at once with the settings' starting tissues; Infinity without end. */
  readonly noStopMin: number;
  readonly workingModM: number;
  readonly restingModM: number;
  readonly hypoxicAboveM: number;
  /** For a gas without helium; null with it. */
  readonly equivalentAirDepthM: number | null;
  readonly equivalentNarcoticDepthM: number;
  readonly densityGL: number;
  /** The longest single exposure here; Infinity where oxygen counts for nothing. */
  readonly singleLimitMin: number;
  readonly pulmonaryUnitsPerMin: number;
}

/** Gases beside each other at a depth of a dive's site, under its limits. */
export function compareGases(
  gases: readonly Gas[],
  depthM: number,
  settings: Settings,
  narcotic: Narcotic = 'nitrogen and oxygen',
): GasAtDepth[] {
  const site = { surfaceBar: atmosphereBar(settings.altitudeM), barPerMetre: barPerMetre(settings.water) };
  const { variant, first, respiratoryQuotient } = settings.model;
  const coefficients = compartments(variant, first);
  const load = { ...startingTissues(settings, coefficients), ...site, compartments: coefficients, at: 0 };
  const lungs = { lungOffsetBar: lungOffsetBar(respiratoryQuotient) };
  const ambientBar = ambientBarAt(depthM, site);
  return gases.map((gas) => {
    const partial = partialPressures(gas, ambientBar);
    return {
      gas,
      depthM,
      partial,
      noStopMin: noStop(load, breathedAt(lungs, gas, ambientBar), settings.gradientFactors.high).minutes,
      workingModM: gasModM(gas, WORKING_PO2_BAR, site),
      restingModM: gasModM(gas, RESTING_PO2_BAR, site),
      hypoxicAboveM: hypoxicAboveM(gas, site),
      equivalentAirDepthM: gas.he > 0 ? null : equivalentAirDepthM(gas, depthM, site),
      equivalentNarcoticDepthM: equivalentNarcoticDepthM(gas, depthM, narcotic, site),
      densityGL: gasDensityGL(gas, ambientBar),
      singleLimitMin: singleLimitMin(partial.oxygenBar),
      pulmonaryUnitsPerMin: pulmonaryRate().at(partial.oxygenBar),
    };
  });
}
