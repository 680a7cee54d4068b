import { atmosphereChecks } from './atmosphere';
import { boyleChecks } from './boyle';
import type { Check } from './check';
import { compressibilityChecks } from './compressibility';
import { commonPracticeChecks } from './common-practice';
import type { Engine } from './engine';
import { gasDensityChecks } from './gas-density';
import { gasDepthChecks } from './gas-depths';
import { gradientFactorChecks } from './gradient-factors';
import { integrationChecks } from './integration';
import { loadingChecks } from './loading';
import { mixtureChecks } from './mixtures';
import { mValueChecks } from './m-values';
import { noStopTableChecks } from './no-stop-tables';
import { oxygenChecks } from './oxygen';
import { relationChecks } from './relations';
import { waterChecks } from './water';

/** A set of checks on one subject. `run` computes them from the engine it is given. */
export interface CheckGroup {
  readonly id: string;
  readonly title: string;
  /** What a reader should know before the rows. */
  readonly about: string;
  readonly run: (engine: Engine) => readonly Check[] | Promise<readonly Check[]>;
}

/** Every group once, in the order a reader meets them. */
export const CHECK_GROUPS: readonly CheckGroup[] = [
  {
    id: 'relations',
    title: 'Where the coefficients come from',
    about:
      'Variant A was made by rule: a = 2 / ∛t and b = 1.005 − 1 / √t, of the half-time t. Two printed values of b, in compartments 4 and 5, leave the rule. B and C then lower some values of a by hand.',
    run: relationChecks,
  },
  {
    id: 'm-values',
    title: 'Limits in Workman’s form',
    about:
      'What each compartment tolerates at the surface, and for each metre deeper, as the published tables print it. Nitrogen 1 to 3 was read; the rest is recalled, and so are the coefficients, so there two recollections are held against each other.',
    run: mValueChecks,
  },
  {
    id: 'mixtures',
    title: 'Two gases in one compartment',
    about: 'With nitrogen and helium together, a and b are averaged by how much of each the compartment holds.',
    run: mixtureChecks,
  },
  {
    id: 'gradient-factors',
    title: 'Gradient factors',
    about:
      'A gradient factor lets a compartment use only part of the way from ambient pressure to its limit. Baker’s papers keep the line from low to high on all the time and round its foot to the first stop; here it is there only while high is broken and begins at the anchor unrounded, so that no figure jumps.',
    run: gradientFactorChecks,
  },
  {
    id: 'loading',
    title: 'Gas in the lungs and in the tissues',
    about:
      'Haldane’s solution at constant depth and Schreiner’s while the depth changes, worked elsewhere by arithmetic.',
    run: loadingChecks,
  },
  {
    id: 'integration',
    title: 'The same by brute force',
    about:
      'A general-purpose numerical solver, which knows nothing of diving, steps through whole dives: down, at depth, and up through a change of gas.',
    run: integrationChecks,
  },
  {
    id: 'atmosphere',
    title: 'Pressure at altitude',
    about: 'The standard atmosphere, as printed in metres and in feet.',
    run: atmosphereChecks,
  },
  {
    id: 'water',
    title: 'Pressure of water',
    about: 'A depth gauge reads pressure and calls it depth, by a water it is told to assume.',
    run: waterChecks,
  },
  {
    id: 'boyle',
    title: 'Held gas on the way up',
    about: 'Gas that cannot escape grows as pressure falls. This needs no tissue model, and it is what tears lungs.',
    run: boyleChecks,
  },
  {
    id: 'gas-depths',
    title: 'Depths a gas is good for',
    about:
      'Each gas of a mixture presses as if it were alone. From that follow the depths a gas may be breathed at and the best mixture for a depth.',
    run: gasDepthChecks,
  },
  {
    id: 'gas-density',
    title: 'How heavy the gas is to breathe',
    about:
      'Density by the ideal gas law against handbooks, and against the depths on air that are quoted beside the advised maxima.',
    run: gasDensityChecks,
  },
  {
    id: 'oxygen',
    title: 'What oxygen costs',
    about:
      'The NOAA exposure limits and the units of pulmonary dose, both in standard atmospheres. Between the rows, and above 1.6 atm, this table says nothing: what the engine does there is a choice of its own and can’t be checked against it. Other limits are published for oxygen breathed alone, up to 2.5 atm (Butler and Thalmann 1986, from memory); they are for another kind of dive and aren’t used.',
    run: oxygenChecks,
  },
  {
    id: 'compressibility',
    title: 'Real gas in a cylinder',
    about:
      'At high pressure a cylinder holds more or less than volume times pressure. Mixtures are taken as the mean of their pure gases.',
    run: compressibilityChecks,
  },
  {
    id: 'no-stop-tables',
    title: 'No-stop times beside published tables',
    about:
      'Tables rest on other models, other risks and rounding. The bare model should lie near them and fall with depth; it should never be expected to match.',
    run: noStopTableChecks,
  },
  {
    id: 'common-practice',
    title: 'What instruments are seen to show',
    about: 'Facts of the trade, with no source. They show whether the model lands where divers expect, no more.',
    run: commonPracticeChecks,
  },
];
