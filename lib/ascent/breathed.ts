import { nitrogenFraction, type Gas } from '../physics/gas';
import type { Breathed } from './no-stop';
import type { AscentSite } from './plan/schedule';

/** Pressure of each inert gas in the lungs, bar, of a gas breathed at an ambient pressure in bar. */
export function breathedAt(site: Pick<AscentSite, 'lungOffsetBar'>, gas: Gas, ambientBar: number): Breathed {
  const dryBar = ambientBar - site.lungOffsetBar;
  return { nitrogenBar: dryBar * nitrogenFraction(gas), heliumBar: dryBar * gas.he };
}
