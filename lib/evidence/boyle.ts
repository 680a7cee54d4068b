import published from '../../content/published/boyle.json';
import { boyleSchema } from '../../content/published/schema';
import { METRES_PER_FOOT } from '../quantity/length';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'boyle';

/** How a held gas grows between two depths, by the engine's pressures, against the factors that texts print. */
export function boyleChecks(engine: Engine): Check[] {
  const { source, tolerances, metres, volumeAtDepth, feet, quarts } = boyleSchema.parse(published);
  const inMetres = (fromM: number, toM: number) => {
    const perMetre = engine.barPerMetre('reference');
    return (1 + fromM * perMetre) / (1 + toM * perMetre);
  };
  const inFeet = (fromFt: number, toFt: number) => {
    const perFoot = engine.barPerMetre('salt') * METRES_PER_FOOT;
    return (engine.seaLevelBar + fromFt * perFoot) / (engine.seaLevelBar + toFt * perFoot);
  };
  const common = { group, source, unit: '' };
  const exact = { ...common, tolerance: tolerances.exact.value, reason: tolerances.exact.reason };
  return [
    ...metres.map((row) =>
      compared({
        ...exact,
        id: `${group}-${row.fromM}-${row.toM}`,
        title: `Growth of a held breath from ${row.fromM} m to ${row.toM} m`,
        published: row.factor,
        ours: inMetres(row.fromM, row.toM),
        obtained: row.obtained,
      }),
    ),
    ...volumeAtDepth.map((row) =>
      compared({
        ...exact,
        id: `${group}-volume-${row.depthM}`,
        title: `What is left at ${row.depthM} m of a lungful from the surface`,
        published: row.fraction,
        ours: inMetres(0, row.depthM),
        obtained: row.obtained,
      }),
    ),
    ...feet.map((row) =>
      compared({
        ...common,
        id: `${group}-feet-${row.fromFt}-${row.toFt}`,
        title: `Growth of held gas from ${row.fromFt} ft to ${row.toFt} ft of sea water`,
        published: row.factor,
        ours: inFeet(row.fromFt, row.toFt),
        tolerance: tolerances.feet.value,
        reason: tolerances.feet.reason,
        obtained: row.obtained,
      }),
    ),
    ...quarts.map((row) =>
      compared({
        ...common,
        id: `${group}-quarts-${row.fromFt}-${row.toFt}`,
        title: `Volume at ${row.toFt} ft of ${row.startQt} quarts held since ${row.fromFt} ft`,
        published: row.endQt,
        ours: row.startQt * inFeet(row.fromFt, row.toFt),
        unit: 'qt',
        tolerance: tolerances.quart.value,
        reason: tolerances.quart.reason,
        obtained: row.obtained,
      }),
    ),
  ];
}
