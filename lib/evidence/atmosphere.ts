import published from '../../content/published/atmosphere.json';
import { atmosphereSchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'atmosphere';
const HPA_PER_BAR = 1000;
const HPA_PER_PSI = 68.947572932;
const M_PER_FT = 0.3048;

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
        published: row.psia * HPA_PER_PSI,
        ours: engine.atmosphereBar(row.altitudeFt * M_PER_FT) * HPA_PER_BAR,
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
