import { nitrogenFraction, type Gas } from '../physics/gas';
import type { Breathed } from './no-stop';
import type { AscentSite } from './plan/schedule';
import { gasAt, type Timeline } from '../dive/timeline';

/** Pressure of each inert gas in the lungs, bar, of a gas breathed at an ambient pressure in bar. */
export function breathedAt(site: Pick<AscentSite, 'lungOffsetBar'>, gas: Gas, ambientBar: number): Breathed {
  const dryBar = ambientBar - site.lungOffsetBar;
  return { nitrogenBar: dryBar * nitrogenFraction(gas), heliumBar: dryBar * gas.he };
}

/** Inert gas in the lungs at one sample, bar: what the compartments run after. */
export function breathedInertBar(timeline: Timeline, sample: number): number {
  const { nitrogenBar, heliumBar } = breathedAt(timeline, gasAt(timeline, sample), timeline.ambientBar[sample]!);
  return nitrogenBar + heliumBar;
}
