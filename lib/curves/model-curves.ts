import { AIR } from '../physics/gas';
import type { LimitModel } from '../tissue/models/limit-model';
import { withConventions } from '../tissue/models/limit-model';
import { modelNoStopMin, type ModelSite } from '../tissue/models/model-figures';
import { zhL16 } from '../tissue/models/zh-l16';
import type { NoStopCurve } from './no-stop-curve';

/** A model's no-stop time on air at each of some depths, from an instant arrival, rested; as `noStopCurve` for the engine's own. */
export function modelNoStopCurve(model: LimitModel, site: ModelSite, depthsM: ArrayLike<number>): NoStopCurve {
  const depthM = Float64Array.from(depthsM);
  const figures = Array.from(depthM, (depth) => modelNoStopMin(model, depth, AIR, site));
  return {
    depthM,
    minutes: Float64Array.from(figures, ({ value }) => value),
    leader: Uint8Array.from(figures, ({ leader }) => leader),
  };
}

/** A no-stop time on air by a model as its makers meant it, and by the same constants under today's conventions, min. */
export interface ConventionEffect {
  readonly ownMin: number;
  /** Air and lungs as ZH-L16 takes them. */
  readonly underZhL16Min: number;
}

/** How much of a model's no-stop time is its conventions, not its constants. */
export function conventionEffect(model: LimitModel, site: ModelSite, depthM: number): ConventionEffect {
  return {
    ownMin: modelNoStopMin(model, depthM, AIR, site).value,
    underZhL16Min: modelNoStopMin(withConventions(model, zhL16('C').conventions), depthM, AIR, site).value,
  };
}
