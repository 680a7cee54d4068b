import published from '../../content/published/water.json';
import { waterSchema } from '../../content/published/schema';
import { METRES_PER_FOOT } from '../quantity/length';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'water';
export const PA_PER_BAR = 1e5;
const KG_PER_LB = 0.45359237;

/** The depth gauge's water, fresh and sea water, and the units of sea-water pressure. */
export function waterChecks(engine: Engine): Check[] {
  const { source, tolerances, reference, msw, fsw, fswPerMsw, eos80 } = waterSchema.parse(published);
  const densityOf = (water: 'reference' | 'fresh' | 'salt') =>
    (engine.barPerMetre(water) * PA_PER_BAR) / engine.standardGravity;
  const footOfSeaWaterPa = (fsw.lbPerCubicFt * KG_PER_LB * engine.standardGravity) / METRES_PER_FOOT ** 2;
  const common = { group, source };
  return [
    compared({
      ...common,
      id: `${group}-reference`,
      title: 'Density of the water a depth gauge is calibrated to (EN 13319)',
      published: reference.kgM3,
      ours: densityOf('reference'),
      unit: 'kg/m³',
      tolerance: tolerances.reference.value,
      reason: tolerances.reference.reason,
      obtained: reference.obtained,
    }),
    compared({
      ...common,
      id: `${group}-msw`,
      title: 'A metre of reference water is one msw',
      published: msw.bar,
      ours: engine.barPerMetre('reference'),
      unit: 'bar',
      tolerance: tolerances.msw.value,
      reason: tolerances.msw.reason,
      obtained: msw.obtained,
    }),
    compared({
      ...common,
      id: `${group}-fsw`,
      title: `A foot of sea water at ${fsw.lbPerCubicFt} lb/ft³ under the engine’s gravity`,
      published: fsw.pa,
      ours: footOfSeaWaterPa,
      unit: 'Pa',
      tolerance: tolerances.fsw.value,
      reason: tolerances.fsw.reason,
      obtained: fsw.obtained,
    }),
    compared({
      ...common,
      id: `${group}-fsw-per-msw`,
      title: 'Feet of sea water to the metre of reference water',
      published: fswPerMsw.value,
      ours: (engine.barPerMetre('reference') * PA_PER_BAR) / footOfSeaWaterPa,
      unit: 'fsw/msw',
      tolerance: tolerances.fswPerMsw.value,
      reason: tolerances.fswPerMsw.reason,
      obtained: fswPerMsw.obtained,
    }),
    compared({
      ...common,
      id: `${group}-fresh`,
      title: `Fresh water against EOS-80 at ${eos80.fresh.temperatureC} °C`,
      published: eos80.fresh.kgM3,
      ours: densityOf('fresh'),
      unit: 'kg/m³',
      tolerance: tolerances.fresh.value,
      reason: tolerances.fresh.reason,
      obtained: eos80.fresh.obtained,
    }),
    compared({
      ...common,
      id: `${group}-salt`,
      title: `Sea water against EOS-80 at ${eos80.salt.temperatureC} °C and a salinity of ${eos80.salt.salinity}`,
      published: eos80.salt.kgM3,
      ours: densityOf('salt'),
      unit: 'kg/m³',
      tolerance: tolerances.salt.value,
      reason: tolerances.salt.reason,
      obtained: eos80.salt.obtained,
    }),
  ];
}
