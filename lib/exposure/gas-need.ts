import type { AscentPart } from '../ascent/plan/schedule';
import type { Cylinder } from '../dive/supply';
import { sameGas, type Gas } from '../physics/gas';
import { gasBreathedL, type BreathingRates } from './consumption';
import { ambientBarAt, type Site } from './gas-depths';
import { absoluteOfGauge, gaugeOfAbsolute, IDEAL_GAS, REAL_GAS, type GasLaw } from './gas-law';

/** Gas one part of a way up takes, litres at 1 bar. */
export interface PartNeed extends AscentPart {
  readonly litres: number;
}

/** What is needed of one gas, and what the cylinders of it have to show for it. */
export interface GasNeed {
  readonly gas: Gas;
  /** Litres at 1 bar. */
  readonly litres: number;
  /** The gauge pressure that holds it, alike in all cylinders of this gas, bar; null when no cylinder holds the gas. */
  readonly idealBar: number | null;
  readonly realBar: number | null;
  /** Whether the cylinders, as filled, hold as much, by either law. */
  readonly enough: boolean;
}

/** The gas each part takes for so many divers breathing so many times as fast as usual. */
export function partNeeds(parts: readonly AscentPart[], rates: BreathingRates, site: Site, times: number): PartNeed[] {
  return parts.map((part) => {
    const rate = part.fromM === part.toM ? rates.stops : part.toM < part.fromM ? rates.ascent : rates.descent;
    const [fromBar, toBar] = [ambientBarAt(part.fromM, site), ambientBarAt(part.toM, site)];
    return { ...part, litres: times * gasBreathedL(rate, fromBar, toBar, part.minutes) };
  });
}

/** The needs of parts gathered by gas, in the order the gases are breathed. */
export function gasNeeds(parts: readonly PartNeed[], cylinders: readonly Cylinder[], site: Site): GasNeed[] {
  const gases: Gas[] = [];
  for (const { gas } of parts) if (!gases.some((known) => sameGas(known, gas))) gases.push(gas);
  return gases.map((gas) => {
    const own = parts.filter((part) => sameGas(part.gas, gas));
    const litres = own.reduce((sum, part) => sum + part.litres, 0);
    const held = cylinders.filter((one) => sameGas(one.gas, gas));
    const waterL = held.reduce((sum, one) => sum + one.waterL, 0);
    // Below the pressure where it is breathed last nothing can be drawn.
    const leftBar = ambientBarAt(own.at(-1)!.toM, site);
    const showing = (law: GasLaw) => {
      if (held.length === 0) return null;
      const together = { waterL, gas };
      return gaugeOfAbsolute(law.absoluteBar(together, litres + law.contentL(together, leftBar)));
    };
    const holds = (law: GasLaw) =>
      held.reduce(
        (sum, one) => sum + law.contentL(one, absoluteOfGauge(one.startBar)) - law.contentL(one, leftBar),
        0,
      ) >= litres;
    return {
      gas,
      litres,
      idealBar: showing(IDEAL_GAS),
      realBar: showing(REAL_GAS),
      enough: holds(IDEAL_GAS) && holds(REAL_GAS),
    };
  });
}
