/** What a rule's setting is called, taken from its name in the rule: `dueBelowM` is "due below", in m. */
export interface FieldName {
  readonly label: string;
  readonly unit: string | undefined;
}

const UNITS: readonly (readonly [suffix: string, unit: string])[] = [
  ['MMin', 'm/min'],
  ['Min', 'min'],
  ['M', 'm'],
  ['S', 's'],
  ['H', 'h'],
];

export function fieldName(key: string): FieldName {
  const found = UNITS.find(([suffix]) => key.endsWith(suffix) && key.length > suffix.length);
  const stem = found ? key.slice(0, -found[0].length) : key;
  const words = stem
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase()
    .trim();
  return { label: words.charAt(0).toUpperCase() + words.slice(1), unit: found?.[1] };
}
