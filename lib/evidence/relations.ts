import published from '../../content/published/zhl16.json';
import { zhl16Schema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { coefficientsAt } from './rows';

const group = 'relations';

/**
 * The coefficients against the rules they were made by: a = 2·t^(−1/3) and b = 1.005 − t^(−1/2) in variant A, with the
 * two printed exceptions of b; the ratio of nitrogen's half-times to helium's; and which compartments B and C lower.
 */
export function relationChecks(engine: Engine): Check[] {
  const { source, tolerances, relation, heliumRatio, variants, values } = zhl16Schema.parse(published);
  const checks: Check[] = [];
  for (const { compartment } of values) {
    const { nitrogen, helium } = coefficientsAt(engine, 'A', compartment);
    const common = { group, source, obtained: relation.obtained };
    checks.push(
      compared({
        ...common,
        id: `${group}-a-${compartment}`,
        title: `Nitrogen a of compartment ${compartment}, variant A, follows 2 / ∛t`,
        published: 2 / Math.cbrt(nitrogen.halfTimeMin),
        ours: nitrogen.a,
        unit: 'bar',
        tolerance: tolerances.a.value,
        reason: tolerances.a.reason,
      }),
    );
    const exception = relation.exceptions.find((one) => one.compartment === compartment);
    checks.push(
      compared({
        ...common,
        id: `${group}-b-${compartment}`,
        title: exception
          ? `Nitrogen b of compartment ${compartment} would be ${exception.relationGives} by 1.005 − 1 / √t`
          : `Nitrogen b of compartment ${compartment} follows 1.005 − 1 / √t`,
        published: exception ? exception.relationGives : 1.005 - 1 / Math.sqrt(nitrogen.halfTimeMin),
        ours: exception ? 1.005 - 1 / Math.sqrt(nitrogen.halfTimeMin) : nitrogen.b,
        unit: '',
        tolerance: tolerances.b.value,
        reason: tolerances.b.reason,
        ...(exception && { note: `An exception: the engine uses the printed ${exception.b}; ${exception.note}.` }),
      }),
    );
    const ratio = heliumRatio.exceptions.find((one) => one.compartment === compartment);
    checks.push(
      compared({
        ...common,
        id: `${group}-helium-${compartment}`,
        title: `Compartment ${compartment} takes up helium ${ratio?.value ?? heliumRatio.value} times as fast as nitrogen`,
        published: ratio?.value ?? heliumRatio.value,
        ours: nitrogen.halfTimeMin / helium.halfTimeMin,
        unit: '',
        tolerance: tolerances.halfTimeRatio.value,
        reason: tolerances.halfTimeRatio.reason,
        obtained: heliumRatio.obtained,
        ...(ratio && { note: `An exception: ${ratio.note}.` }),
      }),
    );
  }
  for (const variant of ['B', 'C'] as const) {
    const lowered = values.filter(
      ({ compartment }) =>
        coefficientsAt(engine, variant, compartment).nitrogen.a < coefficientsAt(engine, 'A', compartment).nitrogen.a,
    );
    checks.push(
      compared({
        id: `${group}-variant-${variant}`,
        group,
        title: `Variant ${variant} lowers a in compartments ${variants[variant].join(', ')} and in no other`,
        published: variants[variant].length,
        ours: lowered.every(({ compartment }) => variants[variant].includes(compartment)) ? lowered.length : Number.NaN,
        unit: 'compartments',
        tolerance: 0,
        reason: 'a list is right or wrong',
        source,
        obtained: variants.obtained,
      }),
    );
  }
  return checks;
}
