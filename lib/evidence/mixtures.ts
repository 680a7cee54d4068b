import published from '../../content/published/zhl16.json';
import { zhl16Schema } from '../../content/published/schema';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { rowOf } from './rows';

const group = 'mixtures';

/** The published example of averaging a and b by the two gases a compartment holds. */
export function mixtureChecks(engine: Engine): Check[] {
  const { source, tolerances, mixtureExample: example } = zhl16Schema.parse(published);
  const { first, index } = rowOf(example.compartment);
  const ours = engine.coefficientsOf(
    {
      compartments: engine.compartments('A', first),
      nitrogenBar: new Float64Array(16).fill(1 - example.o2 - example.he),
      heliumBar: new Float64Array(16).fill(example.he),
      at: 0,
      surfaceBar: engine.seaLevelBar,
      barPerMetre: engine.barPerMetre('reference'),
    },
    index,
  );
  return (['a', 'b'] as const).map((name) =>
    compared({
      id: `${group}-${name}`,
      group,
      title: `${name} of compartment ${example.compartment} holding the inert gas of trimix 18/50`,
      published: example[name],
      ours: ours[name],
      unit: name === 'a' ? 'bar' : '',
      tolerance: tolerances.mixture.value,
      reason: tolerances.mixture.reason,
      source,
      obtained: example.obtained,
    }),
  );
}
