import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scenario } from './scenario-schema';

/** A ready dive as it is read in the units chosen. */
export function scenarioIn(scenario: Scenario, system: UnitSystem): Pick<Scenario, 'title' | 'shows' | 'script'> {
  return system === 'imperial' ? scenario.inFeet : scenario;
}

/** Whether a script is a ready dive as it stands, in either units. */
export function isScenario({ script, inFeet }: Scenario, typed: string | undefined): boolean {
  return typed === script || typed === inFeet.script;
}
