import { expect, it } from 'vitest';
import published from '@/content/published/zhl16.json';
import { GasPath } from '@/lib/ascent/gas-path';
import { compartments } from '@/lib/tissue/coefficients';

it('a mixture is tolerated by the mean of its gases’ limits, as in the published example', () => {
  const { a, b } = published.mixtureExample;
  const [nitrogenBar, heliumBar] = [0.32, 0.5].map((share) => new Float64Array(16).fill(4 * share)) as [
    Float64Array,
    Float64Array,
  ];
  const path = new GasPath(compartments('C', '1'), 1.01325);
  path.begin(
    nitrogenBar,
    heliumBar,
    0,
    1,
    { nitrogenStartBar: 0, nitrogenEndBar: 0, heliumStartBar: 0, heliumEndBar: 0 },
    1,
  );
  // (P − a·gf) / (gf/b − gf + 1): Baker, "Understanding M-values", 1998, from memory.
  const toleratedBar = (4 * 0.82 - a * 0.85) / (0.85 / b - 0.85 + 1);
  expect(path.toleratedBar(0, 0, 0.85)).toBeCloseTo(toleratedBar - 1.01325, 3);
  expect(path.overBar(0, 0, 0.85, toleratedBar)).toBeCloseTo(0, 3);
});
