import published from '../../content/published/m-values.json';
import { mValuesSchema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { coefficientsAt } from './rows';

const group = 'm-values';
const VARIANTS = ['A', 'B', 'C'] as const;
const MSW_PER_BAR = 10;

/**
 * The engine's limits in Workman's form against the published tables: what each compartment tolerates at the surface
 * (M0) and how much more for each metre of depth (ΔM).
 */
export function mValueChecks(engine: Engine): Check[] {
  const { source, tolerances, surfaceMsw, values } = mValuesSchema.parse(published);
  const surfaceBar = surfaceMsw / MSW_PER_BAR;
  return values.flatMap((row) => {
    const name = `${row.gas} compartment ${row.compartment}`;
    const common = { group, source, obtained: row.obtained };
    const surfacing = VARIANTS.filter((variant) => row.gas === 'nitrogen' || variant === 'C').map((variant) => {
      const { a, b } = coefficientsAt(engine, variant, row.compartment)[row.gas];
      return compared({
        ...common,
        id: `${group}-${row.gas}-${row.compartment}-surfacing-${variant}`,
        title: row.gas === 'nitrogen' ? `M0 of ${name}, variant ${variant}` : `M0 of ${name}`,
        published: row.gas === 'nitrogen' ? row.surfacingMsw[variant] : row.surfacingMsw,
        ours: engine.mValueBar(a, b, surfaceBar) * MSW_PER_BAR,
        unit: 'msw',
        tolerance: tolerances.surfacing.value,
        reason: tolerances.surfacing.reason,
      });
    });
    const { a, b } = coefficientsAt(engine, 'C', row.compartment)[row.gas];
    const slope = compared({
      ...common,
      id: `${group}-${row.gas}-${row.compartment}-slope`,
      title: `ΔM of ${name}`,
      published: row.slope,
      ours: engine.mValueBar(a, b, surfaceBar + 1) - engine.mValueBar(a, b, surfaceBar),
      unit: '',
      tolerance: tolerances.slope.value,
      reason: tolerances.slope.reason,
    });
    return [...surfacing, slope];
  });
}
