import published from '../../content/published/atmosphere.json';
import { atmosphereSchema } from '../../content/published/schema';
import { METRES_PER_FOOT } from '../quantity/length';
import { BAR_PER_PSI } from '../quantity/pressure';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'atmosphere';
const HPA_PER_BAR = 1000;

/** Pressure at altitude against the levels and rows printed of the standard atmosphere. */
export function atmosphereChecks(engine: Engine): Check[] {
  const { source, tolerances, levels, values } = atmosphereSchema.parse(published);
  return [
    ...levels.map((row) =>
      compared({
        id: `${group}-level-${row.hPa}`,
        group,
        title: `Pressure at ${row.heightM} m`,
        published: row.hPa,
        ours: engine.atmosphereBar(row.heightM) * HPA_PER_BAR,
        unit: 'hPa',
        tolerance: tolerances.levels.value,
        reason: tolerances.levels.reason,
        source,
        obtained: row.obtained,
      }),
    ),
    ...values.map((row) =>
      compared({
        id: `${group}-feet-${row.altitudeFt}`,
        group,
        title: `Pressure at ${row.altitudeFt} ft`,
        published: row.psia * BAR_PER_PSI * HPA_PER_BAR,
        ours: engine.atmosphereBar(row.altitudeFt * METRES_PER_FOOT) * HPA_PER_BAR,
        unit: 'hPa',
        tolerance: tolerances.values.value,
        reason: tolerances.values.reason,
        source,
        obtained: row.obtained,
        note: `Printed as ${row.psia} psi.`,
      }),
    ),
  ];
}
