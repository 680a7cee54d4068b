import published from '../../content/published/gas-density.json';
import { gasDensitySchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { GASES } from './compressibility';

const group = 'gas-density';
/** The temperature at which the quoted depths have the quoted densities, °C. */
const QUOTED_AT_C = 0;

/** Densities by the ideal gas law against handbooks, and against the depths quoted beside the advised maxima. */
export function gasDensityChecks(engine: Engine): Check[] {
  const { source, tolerances, densities, quoted } = gasDensitySchema.parse(published);
  const common = { group, source, unit: 'g/L' };
  return [
    ...densities.map(({ gas, gramsPerL, temperatureC, pressureBar, obtained }) =>
      compared({
        ...common,
        id: `${group}-${gas}-${temperatureC}`,
        title: `Density of ${gas} at ${temperatureC} °C and ${pressureBar} bar`,
        published: gramsPerL,
        ours: engine.gasDensityGL(GASES[gas], pressureBar, temperatureC),
        tolerance: gramsPerL * tolerances.density.value,
        reason: tolerances.density.reason,
        obtained,
      }),
    ),
    ...quoted.map(({ gas, depthM, gramsPerL, obtained }) =>
      compared({
        ...common,
        id: `${group}-quoted-${depthM}`,
        title: `Density of ${gas} at ${depthM} m, as quoted beside the advised maxima`,
        published: gramsPerL,
        ours: engine.gasDensityGL(
          GASES[gas],
          engine.seaLevelBar + depthM * engine.barPerMetre('reference'),
          QUOTED_AT_C,
        ),
        tolerance: tolerances.quoted.value,
        reason: tolerances.quoted.reason,
        obtained,
      }),
    ),
  ];
}
