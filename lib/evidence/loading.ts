import published from '../../content/published/loading.json';
import { loadingSchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { BAR_PER_MMHG } from '../quantity/pressure';

const group = 'loading';

/** Gas in the lungs, and Haldane's and Schreiner's solutions, against constants and values worked elsewhere. */
export function loadingChecks(engine: Engine): Check[] {
  const { source, tolerances, waterVapour, lungOffset, constantDepth, changingDepth } = loadingSchema.parse(published);
  const worked = {
    group,
    unit: 'bar',
    tolerance: tolerances.worked.value,
    reason: tolerances.worked.reason,
    source,
  };
  return [
    compared({
      ...worked,
      id: `${group}-vapour`,
      title: `Water vapour in the lungs is ${waterVapour.mmHg} mmHg`,
      published: waterVapour.mmHg * BAR_PER_MMHG,
      ours: engine.waterVapourBar,
      tolerance: tolerances.vapour.value,
      reason: tolerances.vapour.reason,
      obtained: waterVapour.obtained,
    }),
    ...lungOffset.map((row) =>
      compared({
        ...worked,
        id: `${group}-offset-${row.respiratoryQuotient}`,
        title: `Part of the pressure that is not breathed gas, respiratory quotient ${row.respiratoryQuotient}`,
        published: row.bar,
        ours: engine.lungOffsetBar(row.respiratoryQuotient),
        tolerance: tolerances.offset.value,
        reason: tolerances.offset.reason,
        obtained: row.obtained,
      }),
    ),
    ...constantDepth.map((row) => {
      const startBar = engine.alveolarInertBar(row.startAmbientBar, row.inertFraction);
      const breathedBar = engine.alveolarInertBar(row.ambientBar, row.inertFraction);
      return compared({
        ...worked,
        id: `${group}-haldane-${row.halfTimeMin}`,
        title: `Haldane: ${row.minutes} min at ${row.ambientBar} bar, half-time ${row.halfTimeMin} min`,
        published: row.tensionBar,
        ours: engine.haldane(startBar, breathedBar, Math.LN2 / row.halfTimeMin, row.minutes),
        obtained: row.obtained,
      });
    }),
    ...changingDepth.map((row) => {
      const startBar = engine.alveolarInertBar(row.fromAmbientBar, row.inertFraction);
      return compared({
        ...worked,
        id: `${group}-schreiner-${row.toAmbientBar > row.fromAmbientBar ? 'down' : 'up'}-${row.halfTimeMin}`,
        title: `Schreiner: from ${row.fromAmbientBar} to ${row.toAmbientBar} bar in ${row.minutes} min, half-time ${row.halfTimeMin} min`,
        published: row.tensionBar,
        ours: engine.schreiner(
          startBar,
          startBar,
          row.ambientBarPerMin * row.inertFraction,
          Math.LN2 / row.halfTimeMin,
          row.minutes,
        ),
        obtained: row.obtained,
      });
    }),
  ];
}
