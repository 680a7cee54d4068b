import table1986 from '../../content/published/no-stop-1986.json';
import navy from '../../content/published/no-stop-us-navy.json';
import water from '../../content/published/water.json';
import { navyNoStopSchema, noStop1986Schema, waterSchema } from '../../content/published/schema';
import { AIR, nitrogenFraction } from '../physics/gas';
import { tissuesSettledOnAir } from '../tissue/tissues';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { PA_PER_BAR } from './water';

const group = 'no-stop-tables';

/** Minutes from an instant arrival at a depth on air, first dive, ZH-L16C with 1b and no gradient factor. */
function bareNoStopMin(engine: Engine, surfaceBar: number, depthBar: number): number {
  const load = {
    compartments: engine.compartments('C', '1b'),
    ...tissuesSettledOnAir(surfaceBar, 1),
    at: 0,
    surfaceBar,
    barPerMetre: engine.barPerMetre('reference'),
  };
  const nitrogenBar = engine.alveolarInertBar(surfaceBar + depthBar, nitrogenFraction(AIR));
  return engine.noStop(load, { nitrogenBar, heliumBar: 0 }, 1).minutes;
}

/**
 * The bare model's no-stop times against two published tables. They rest on other models, so this is an envelope: near,
 * never equal, and ever shorter with depth.
 */
export function noStopTableChecks(engine: Engine): Check[] {
  const fromNavy = navyNoStopSchema.parse(navy);
  const from1986 = noStop1986Schema.parse(table1986);
  const barPerFsw = waterSchema.parse(water).fsw.pa / PA_PER_BAR;
  const common = { group, unit: 'min' };
  const navyRows = fromNavy.revision7
    .filter(({ depthFsw }) => depthFsw >= fromNavy.comparedFromFsw)
    .map((row) => ({ row, ours: bareNoStopMin(engine, engine.seaLevelBar, row.depthFsw * barPerFsw) }));
  const rows1986 = from1986.values
    .filter(({ depthM }) => depthM >= from1986.comparedFromM)
    .map((row) => {
      const surfaceBar = engine.atmosphereBar(from1986.altitudeM);
      return { row, ours: bareNoStopMin(engine, surfaceBar, row.depthM * engine.barPerMetre('reference')) };
    });
  return [
    ...navyRows.map(({ row, ours }) =>
      compared({
        ...common,
        id: `${group}-navy-${row.depthFsw}`,
        title: `No-stop time at ${row.depthFsw} fsw on air, near the US Navy’s`,
        published: row.minutes,
        ours,
        tolerance: row.minutes * fromNavy.tolerances.band.value,
        reason: fromNavy.tolerances.band.reason,
        source: fromNavy.source,
        obtained: row.obtained,
      }),
    ),
    ...rows1986.map(({ row, ours }) => {
      const band = row.depthM === from1986.comparedFromM ? from1986.tolerances.shallowBand : from1986.tolerances.band;
      return compared({
        ...common,
        id: `${group}-1986-${row.depthM}`,
        title: `No-stop time at ${row.depthM} m on air at ${from1986.altitudeM} m altitude, near Bühlmann’s of 1986`,
        published: row.minutes,
        ours,
        tolerance: row.minutes * band.value,
        reason: band.reason,
        source: from1986.source,
        obtained: row.obtained,
      });
    }),
    compared({
      ...common,
      id: `${group}-falling`,
      title: 'No-stop times grow shorter at every deeper row of the US Navy’s table, as its own never grow longer',
      published: 0,
      ours: navyRows.filter(({ ours }, i) => i > 0 && !(ours < navyRows[i - 1]!.ours)).length,
      unit: 'rows',
      tolerance: 0,
      reason: 'more pressure loads every compartment faster',
      source: fromNavy.source,
      obtained: 'from memory',
    }),
  ];
}
