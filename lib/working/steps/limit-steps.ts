import { limitBar } from '../../tissue/limit';
import { fromSetting, quantity, type Chain } from '../chain';
import type { Coefficients } from './compartment-steps';
import { SOURCES } from '../sources';
import type { Named, StepId, SymbolName } from '../working';

const GRADIENT_FACTOR_RANGE = [0.01, 1] as const;

/** A gradient factor as it is set; `which` is left out where low and high are one. */
export function gradientFactor(symbol: SymbolName, value: number, which?: 'low' | 'high'): Named {
  return fromSetting(symbol, {
    ...quantity(value, ''),
    meaning: which ? `gradient factor, ${which}` : 'gradient factor',
    within: GRADIENT_FACTOR_RANGE,
  });
}

interface LimitNames {
  readonly id: StepId;
  readonly symbol: SymbolName;
  readonly title: string;
  readonly why: string;
}

/** What a compartment tolerates at a pressure under a gradient factor: p + gf·(a + p/b − p). */
export function limitStep(chain: Chain, names: LimitNames, pressure: Named, gf: Named, { a, b }: Coefficients): Named {
  const p = pressure.symbol;
  return chain.add({
    ...names,
    expression: `${p} + ${gf.symbol} * (${a.symbol} + ${p} / ${b.symbol} - ${p})`,
    values: [pressure, gf, a, b],
    result: quantity(limitBar(a.value.value, b.value.value, gf.value.value, pressure.value.value), 'bar'),
    source: SOURCES.gradientFactors,
  });
}

/** The limit at the surface under `high`, which the no-stop time runs towards. */
export function surfaceLimitStep(chain: Chain, surface: Named, gf: Named, coefficients: Coefficients): Named {
  return limitStep(
    chain,
    {
      id: 'step:surface-limit',
      symbol: 'M_0',
      title: 'what this compartment tolerates at the surface',
      why: 'The gradient factor keeps a share of the room between the surface pressure and the model’s own limit.',
    },
    surface,
    gf,
    coefficients,
  );
}
