import { barPerMetre, WATERS, type Water } from '../physics/water';
import type { DepthDeviation } from './deviations';

/** Depth readings this deep say something of the scale they are counted in, m. */
const DEEP_ENOUGH_M = 8;
/** A scale explains readings when it leaves less than this of them, as a part of the depth. */
const EXPLAINED = 0.006;
/** A scale closer than this to the unit's own cannot be told from it. */
const TELLING = 0.012;

/**
 * The water a unit seems to be set to where that explains its deviations: depths in metres of fresh water are about 3%
 * more than in metres of salt water at the same pressure. Undefined where they need no explaining or have another cause.
 */
export function seemsSetTo(own: Water, deviations: readonly DepthDeviation[]): Water | undefined {
  const deep = deviations.filter(({ shownM, expected }) => shownM !== undefined && expected.depthM >= DEEP_ENOUGH_M);
  if (deep.length < 2) return undefined;
  const ratios = deep.map(({ shownM, expected }) => shownM! / expected.depthM);
  const misfit = (water: Water) =>
    Math.max(...ratios.map((ratio) => Math.abs(ratio - barPerMetre(own) / barPerMetre(water))));
  if (misfit(own) < TELLING) return undefined;
  const [best] = WATERS.filter((water) => water !== own).sort((one, other) => misfit(one) - misfit(other));
  return best !== undefined && misfit(best) < EXPLAINED ? best : undefined;
}
