import type { Cylinder } from '../dive/supply';
import type { Timeline } from '../dive/timeline';
import { sameGas } from '../physics/gas';
import { gasBreathedL, phasesOf, type BreathingRates } from './consumption';
import { ambientBarAt } from './gas-depths';
import { absoluteOfGauge, type GasLaw } from './gas-law';

/** A stretch of a leg breathed from one cylinder, or from none when none holds the gas. Every leg is covered, in order. */
interface Spell {
  readonly leg: number;
  readonly startS: number;
  readonly endS: number;
  /** Index into the cylinders; -1 for none, and between dives. */
  readonly cylinder: number;
  readonly rateLMin: number;
}

/** A cylinder breathed down to the pressure around the diver, from which no more can be drawn. */
export interface RunOut {
  readonly timeS: number;
  readonly depthM: number;
  readonly cylinder: number;
  /** The next cylinder of the same gas; -1 for none. */
  readonly next: number;
}

export interface Spells {
  readonly spells: readonly Spell[];
  readonly runOuts: readonly RunOut[];
}

/** The moment a cylinder runs out is found to this, s. */
const MOMENT_S = 1e-6;

/**
 * Who is breathed when: the cylinder of the gas in use, and of several with the same gas the first listed that is not
 * empty. A cylinder is empty once its pressure has fallen to the water's around the diver, and stays so for the dive;
 * every dive of the day begins with the cylinders as listed.
 */
export function gasSpells(
  timeline: Timeline,
  cylinders: readonly Cylinder[],
  law: GasLaw,
  rates: BreathingRates,
): Spells {
  const { legs, gases } = timeline;
  const phases = phasesOf(legs);
  const spells: Spell[] = [];
  const runOuts: RunOut[] = [];
  const full = () => cylinders.map((one) => law.contentL(one, absoluteOfGauge(one.startBar)));
  let contentL = full();
  let empty = new Set<number>();
  let dive = 0;
  legs.forEach((leg, index) => {
    if (leg.diveNumber !== dive) {
      contentL = full();
      empty = new Set();
      dive = leg.diveNumber;
    }
    const gas = gases[leg.gas]!;
    const nextHolding = () => cylinders.findIndex((one, i) => !empty.has(i) && sameGas(one.gas, gas));
    const rateLMin = leg.interval ? 0 : rates[phases[index]!];
    const perSecondM = leg.endS > leg.startS ? (leg.toM - leg.fromM) / (leg.endS - leg.startS) : 0;
    const ambientAtS = (timeS: number) => ambientBarAt(leg.fromM + perSecondM * (timeS - leg.startS), timeline);
    let startS = leg.startS;
    for (;;) {
      const cylinder = leg.interval ? -1 : nextHolding();
      const vessel = cylinders[cylinder];
      const fromS = startS;
      const usedByS = (timeS: number) =>
        gasBreathedL(rateLMin, ambientAtS(fromS), ambientAtS(timeS), (timeS - fromS) / 60);
      /** What could still be drawn at a moment. */
      const leftAtS = (timeS: number) =>
        contentL[cylinder]! - usedByS(timeS) - law.contentL(vessel!, ambientAtS(timeS));
      const lowestS = vessel ? leastLeftS(fromS, leg.endS, ambientAtS, rateLMin, vessel.waterL) : leg.endS;
      if (!vessel || leftAtS(lowestS) >= 0) {
        spells.push({ leg: index, startS: fromS, endS: leg.endS, cylinder, rateLMin });
        if (vessel) contentL[cylinder]! -= usedByS(leg.endS);
        return;
      }
      const outS = leftAtS(fromS) <= 0 ? fromS : crossing(leftAtS, fromS, lowestS);
      spells.push({ leg: index, startS: fromS, endS: outS, cylinder, rateLMin });
      contentL[cylinder]! -= usedByS(outS);
      empty.add(cylinder);
      runOuts.push({
        timeS: outS,
        depthM: leg.fromM + perSecondM * (outS - leg.startS),
        cylinder,
        next: nextHolding(),
      });
      startS = outS;
    }
  });
  return { spells, runOuts };
}

/**
 * When the least can be drawn within a stretch. On the way up the water lets go of gas in the cylinder while the diver
 * breathes it: where it lets go faster, the least was before the end, when rate · ambient = volume · fall of ambient.
 */
function leastLeftS(
  fromS: number,
  toS: number,
  ambientAtS: (timeS: number) => number,
  rateLMin: number,
  waterL: number,
): number {
  const fallBarMin = ((ambientAtS(fromS) - ambientAtS(toS)) / (toS - fromS)) * 60;
  if (!(fallBarMin > 0)) return toS;
  const balancedBar = (waterL * fallBarMin) / rateLMin;
  return Math.min(toS, Math.max(fromS, fromS + ((ambientAtS(fromS) - balancedBar) / fallBarMin) * 60));
}

/** Where a function goes from above 0 to below it, by halving. */
function crossing(f: (timeS: number) => number, fromS: number, toS: number): number {
  let before = fromS;
  let after = toS;
  while (after - before > MOMENT_S) {
    const middle = (before + after) / 2;
    if (f(middle) > 0) before = middle;
    else after = middle;
  }
  return before;
}
