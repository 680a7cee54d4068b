import { AIR, nitrogenFraction, sameGas, type Gas } from '../../physics/gas';
import { haldane } from '../loading';
import type { LimitModel } from './limit-model';

/** Where a model is put to use: pressure at the surface and what a metre of the water adds, bar. */
export interface ModelSite {
  readonly surfaceBar: number;
  readonly barPerMetre: number;
}

/** A figure and the compartment that sets it, from 1; 0 where none does. */
export interface ModelFigure {
  readonly value: number;
  readonly leader: number;
}

/** Nitrogen in the lungs by the model's own conventions, bar. Throws RangeError for a gas with helium: these models don't know it. */
export function modelBreathedBar({ name, conventions }: LimitModel, gas: Gas, ambientBar: number): number {
  if (gas.he > 0) throw new RangeError(`${name} knows nitrogen only: compare it on a gas without helium`);
  const fraction = sameGas(gas, AIR) ? conventions.airNitrogen : nitrogenFraction(gas);
  return (ambientBar - conventions.lungOffsetBar) * fraction;
}

/** Tensions of someone settled on air at an ambient pressure, bar, one for each compartment. */
export function modelSettled(model: LimitModel, ambientBar: number): Float64Array {
  return new Float64Array(model.compartments.length).fill(modelBreathedBar(model, AIR, ambientBar));
}

/**
 * No-stop time by a model: minutes from arriving at a depth, with the tensions given (bar), until surfacing at once would
 * pass a limit. 0 once one is passed; Infinity if none ever will be. No credit for gas lost on the way up.
 */
export function modelNoStopMin(
  model: LimitModel,
  depthM: number,
  gas: Gas,
  site: ModelSite,
  tensionsBar = modelSettled(model, site.surfaceBar),
): ModelFigure {
  const breathedBar = modelBreathedBar(model, gas, site.surfaceBar + depthM * site.barPerMetre);
  let value = Infinity;
  let leader = 0;
  model.compartments.forEach(({ halfTimeMin }, c) => {
    const limitBar = model.toleratedTensionBar(c, site.surfaceBar);
    const minutes = minutesToReach(limitBar, tensionsBar[c]!, breathedBar, halfTimeMin);
    if (minutes < value) {
      value = minutes;
      leader = c + 1;
    }
  });
  return { value, leader };
}

/** t = half-time · log2((breathed − P)/(breathed − limit)), min, Haldane's solution turned round; 0 past the limit, Infinity where it is never reached. Pressures in bar. */
export function minutesToReach(limitBar: number, tensionBar: number, breathedBar: number, halfTimeMin: number): number {
  if (tensionBar >= limitBar) return 0;
  return breathedBar <= limitBar
    ? Infinity
    : halfTimeMin * Math.log2((breathedBar - tensionBar) / (breathedBar - limitBar));
}

/** Ceiling by a model: the deepest depth that any of the tensions (bar) needs, m; 0 while the surface is tolerated. */
export function modelCeilingM(
  model: LimitModel,
  tensionsBar: ArrayLike<number>,
  { surfaceBar, barPerMetre }: ModelSite,
): ModelFigure {
  let deepestBar = surfaceBar;
  let leader = 0;
  for (let c = 0; c < model.compartments.length; c += 1) {
    const toleratedBar = model.toleratedAmbientBar(c, tensionsBar[c]!);
    if (toleratedBar > deepestBar) {
      deepestBar = toleratedBar;
      leader = c + 1;
    }
  }
  return { value: (deepestBar - surfaceBar) / barPerMetre, leader };
}

/** A model's tensions after some minutes at a depth on a gas, bar, as new ones. */
export function modelTensionsAfter(
  model: LimitModel,
  tensionsBar: Float64Array,
  breathedBar: number,
  minutes: number,
): Float64Array {
  return tensionsBar.map((bar, c) => haldane(bar, breathedBar, Math.LN2 / model.compartments[c]!.halfTimeMin, minutes));
}
