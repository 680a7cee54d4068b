import { USUAL_DESCENT_M_MIN } from '../../bounds';
import { METRES_PER_FOOT } from '../../../quantity/length';
import { printRate } from '../../../quantity/rate';
import type { UnitSystem } from '../../../quantity/unit-system';
import type { Settings } from '../../dive';

/** The rate a change of depth goes at when its step gives none, m/min. */
export function plannedRateMMin(kind: 'descend' | 'ascend', plan: Settings['plan']): number {
  return kind === 'ascend' ? plan.ascentMMin : (plan.descentMMin ?? USUAL_DESCENT_M_MIN);
}

/** The same as it is said. */
export function sayPlannedRate(kind: 'descend' | 'ascend', plan: Settings['plan'], system: UnitSystem): string {
  return printRate(plannedRateMMin(kind, plan), system);
}

const ROUND_FT_MIN = 5;

/** A planned rate as a mend writes it: in feet, to a round figure. */
export function writePlannedRate(kind: 'descend' | 'ascend', plan: Settings['plan'], system: UnitSystem): string {
  if (system === 'metric') return sayPlannedRate(kind, plan, system);
  const feet = plannedRateMMin(kind, plan) / METRES_PER_FOOT;
  return `${Math.max(ROUND_FT_MIN, Math.round(feet / ROUND_FT_MIN) * ROUND_FT_MIN)} ft/min`;
}
