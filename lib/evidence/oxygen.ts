import published from '../../content/published/oxygen.json';
import { oxygenSchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'oxygen';

/** The rows of the NOAA limits and the printed rates of pulmonary dose; the engine takes pressures in bar. */
export function oxygenChecks(engine: Engine): Check[] {
  const { source, tolerances, limits, dose } = oxygenSchema.parse(published);
  const barOf = (po2Atm: number) => po2Atm * engine.seaLevelBar;
  const common = { group, source };
  const limit = { ...common, unit: 'min', tolerance: tolerances.limit.value, reason: tolerances.limit.reason };
  return [
    ...limits.flatMap(({ po2Atm, singleMin, dailyMin, obtained }) => [
      compared({
        ...limit,
        id: `${group}-single-${po2Atm}`,
        title: `Longest single exposure at ${po2Atm} atm of oxygen`,
        published: singleMin,
        ours: engine.singleLimitMin(barOf(po2Atm)),
        obtained: obtained.singleMin,
      }),
      compared({
        ...limit,
        id: `${group}-daily-${po2Atm}`,
        title: `Longest exposure in 24 hours at ${po2Atm} atm of oxygen`,
        published: dailyMin,
        ours: engine.dailyLimitMin(barOf(po2Atm)),
        obtained: obtained.dailyMin,
      }),
    ]),
    ...dose.map(({ po2Atm, unitsPerMin, obtained, note }) => {
      const tolerance = note ? tolerances.remarked : tolerances.unitsPerMin;
      return compared({
        ...common,
        id: `${group}-dose-${po2Atm}`,
        title: `Units of pulmonary dose in a minute at ${po2Atm} atm of oxygen`,
        published: unitsPerMin,
        ours: engine.pulmonaryRate('diving').at(barOf(po2Atm)),
        unit: '1/min',
        tolerance: tolerance.value,
        reason: tolerance.reason,
        obtained,
        ...(note && { note }),
      });
    }),
  ];
}
