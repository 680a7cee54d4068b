import type { Fact } from './fact';
import { DIVE_FACTS } from './dive-facts';
import { GAS_FACTS } from './gas-facts';
import { MODEL_FACTS } from './model-facts';
import { SETTING_FACTS } from './setting-facts';
import { UNIT_FACTS } from './unit-facts';

/** Every fact a lesson may ask for, as its author reads them. */
export const FACT_GROUPS: readonly { readonly title: string; readonly facts: readonly Fact[] }[] = [
  { title: 'What the model says at a moment', facts: MODEL_FACTS },
  { title: 'What the gas breathed does at a moment', facts: GAS_FACTS },
  { title: 'What a unit makes of a moment', facts: UNIT_FACTS },
  { title: 'What is so of a whole dive', facts: DIVE_FACTS },
  { title: 'What follows from the settings', facts: SETTING_FACTS },
];

const byName = new Map(FACT_GROUPS.flatMap(({ facts }) => facts.map((fact) => [fact.name, fact] as const)));

export const FACT_NAMES: readonly string[] = [...byName.keys()];

/** A fact by the name it has in expressions. */
export function factNamed(name: string): Fact | undefined {
  return byName.get(name);
}
