import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { capital } from '@/lib/quantity/capital';

/** What a rule's setting is called, taken from its name in the rule: `dueBelowM` is "due below", in m. */
export interface FieldName {
  readonly label: string;
  readonly unit: string | undefined;
  /** How large one of the unit is in the rule's own, which is metric. */
  readonly size: number;
}

const UNITS: readonly (readonly [suffix: string, unit: string])[] = [
  ['MMin', 'm/min'],
  ['Min', 'min'],
  ['M', 'm'],
  ['S', 's'],
  ['H', 'h'],
];

export function fieldName(key: string, system: UnitSystem): FieldName {
  const found = UNITS.find(([suffix]) => key.endsWith(suffix) && key.length > suffix.length);
  const stem = found ? key.slice(0, -found[0].length) : key;
  const words = stem
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase()
    .trim();
  const inFeet = system === 'imperial' && found?.[1].startsWith('m') && found[1] !== 'min';
  return {
    label: capital(words),
    unit: inFeet ? found?.[1].replace('m', 'ft') : found?.[1],
    size: inFeet ? METRES_PER_FOOT : 1,
  };
}
