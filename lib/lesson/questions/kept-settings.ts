import type { Dive } from '../../dive/dive';
import { writeGas } from '../../dive/gas-text';

/** What a dive to try may be freed to change besides its steps. */
export const FREEDOMS = [
  'gas',
  'gradient factors',
  'dives',
  'place',
  'start',
  'model',
  'plan',
  'cylinders',
  'units',
] as const;
export type Freedom = (typeof FREEDOMS)[number];

const WORDS: Readonly<Record<Freedom, string>> = {
  gas: 'the gas',
  'gradient factors': 'the gradient factors',
  dives: 'how many dives there are',
  place: 'the altitude or the water',
  start: 'what the diver begins with',
  model: 'the model',
  plan: 'how stops are planned',
  cylinders: 'the cylinders or the breathing',
  units: 'the units on the arm',
};

/** What one dive has other than another, but for its steps; told by the names of what may be freed. */
export function changedSettings(begun: Dive, own: Dive): Freedom[] {
  return FREEDOMS.filter((name) => JSON.stringify(partOf(name, begun)) !== JSON.stringify(partOf(name, own)));
}

function partOf(name: Freedom, { settings, steps }: Dive): unknown {
  switch (name) {
    case 'gas':
      // A change of gas to one that was there before is a step like any other.
      return [
        settings.gas,
        ...settings.carried.map(({ gas }) => gas),
        ...steps.flatMap((s) => (s.kind === 'switch' ? [s.gas] : [])),
      ]
        .map(writeGas)
        .filter((gas, i, all) => all.indexOf(gas) === i)
        .sort();
    case 'gradient factors':
      return settings.gradientFactors;
    case 'dives':
      return steps.filter(({ kind }, i) => kind === 'interval' && i < steps.length - 1).length;
    case 'place':
      return [settings.altitudeM, settings.water];
    case 'start':
      return settings.start;
    case 'model':
      return settings.model;
    case 'plan':
      return [settings.plan, settings.carried.map(({ fromM }) => fromM)];
    case 'cylinders':
      // What they hold is a matter of the gas.
      return JSON.stringify(settings.supply, (key, value: unknown) => (key === 'gas' ? undefined : value));
    case 'units':
      return settings.setups;
  }
}

/** What has to stay as it was and did not, in a sentence; undefined where all of it stayed. */
export function notKept(begun: Dive, own: Dive, free: readonly Freedom[]): string | undefined {
  const changed = changedSettings(begun, own).filter((name) => !free.includes(name));
  if (changed.length === 0) return undefined;
  const what = changed.map((name) => WORDS[name]).join(' and ');
  return `You changed ${what}. Here the dive itself is to be changed, and all else stays as it was.`;
}
