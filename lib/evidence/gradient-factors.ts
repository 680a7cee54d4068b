import published from '../../content/published/gradient-factors.json';
import { gradientFactorsSchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { coefficientsAt } from './rows';

const group = 'gradient-factors';

/** Limits under a gradient factor, and the lowest pressure a tension tolerates, against values worked by hand. */
export function gradientFactorChecks(engine: Engine): Check[] {
  const { source, tolerances, values } = gradientFactorsSchema.parse(published);
  return values.flatMap((row) => {
    const { a, b } = coefficientsAt(engine, 'C', row.compartment).nitrogen;
    const common = {
      group,
      unit: 'bar',
      tolerance: tolerances.worked.value,
      reason: tolerances.worked.reason,
      source,
      obtained: row.obtained,
    };
    return [
      compared({
        ...common,
        id: `${group}-tolerated-${row.gf}`,
        title: `Lowest ambient pressure for ${row.tensionBar} bar in compartment ${row.compartment} at a gradient factor of ${row.gf}`,
        published: row.toleratedAmbientBar,
        ours: engine.toleratedAmbientBar(row.tensionBar, a, b, row.gf),
      }),
      compared({
        ...common,
        id: `${group}-limit-${row.gf}`,
        title: `Limit of compartment ${row.compartment} at 1 bar with a gradient factor of ${row.gf}`,
        published: row.limitAtOneBar,
        ours: engine.limitBar(a, b, row.gf, 1),
      }),
    ];
  });
}
