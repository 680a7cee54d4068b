import published from '../../content/published/compressibility.json';
import { compressibilitySchema } from '../../content/published/schema';
import { AIR, OXYGEN } from '../physics/gas';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'compressibility';
/** Gases as the published tables name them. */
export const GASES = { air: AIR, O2: OXYGEN, N2: { o2: 0, he: 0 }, He: { o2: 0, he: 1 } };

/**
 * Z as the engine makes it, a mean of pure gases, against the reference equation of air, which it does not use; and
 * against printed values.
 */
export function compressibilityChecks(engine: Engine): Check[] {
  const { source, tolerances, grid, pressuresBar, printed } = compressibilitySchema.parse(published);
  const common = { group, source, unit: '' };
  return [
    ...grid
      .filter(({ gas }) => gas === 'air')
      .flatMap(({ temperatureK, z, obtained }) =>
        pressuresBar.map((pressureBar, i) =>
          compared({
            ...common,
            id: `${group}-air-${temperatureK}-${pressureBar}`,
            title: `Z of air at ${pressureBar} bar and ${temperatureK} K, mixed from its gases`,
            published: z[i]!,
            ours: engine.compressibility(AIR, pressureBar, temperatureK),
            tolerance: tolerances.mixture.value,
            reason: tolerances.mixture.reason,
            obtained,
          }),
        ),
      ),
    ...printed.map(({ gas, temperatureK, pressureBar, z, obtained }) =>
      compared({
        ...common,
        id: `${group}-printed-${gas}-${temperatureK}-${pressureBar}`,
        title: `Z of ${gas} at ${pressureBar} bar and ${temperatureK} K, as printed`,
        published: z,
        ours: engine.compressibility(GASES[gas], pressureBar, temperatureK),
        tolerance: tolerances.printed.value,
        reason: tolerances.printed.reason,
        obtained,
      }),
    ),
  ];
}
