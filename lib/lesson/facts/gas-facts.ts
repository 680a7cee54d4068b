import { equivalentAirDepthM, equivalentNarcoticDepthM, gasModM, hypoxicAboveM } from '../../exposure/gas-depths';
import { gasAt } from '../../dive/timeline';
import type { View } from '../questions/subject';
import { NoValue, PERCENT, type MomentFact } from './fact';

const gas = ({ timeline }: View, sample: number) => gasAt(timeline, sample);
const depthM = ({ timeline }: View, sample: number) => timeline.depthM[sample]!;

function withoutHelium(view: View, sample: number) {
  const breathed = gas(view, sample);
  if (breathed.he > 0)
    throw new NoValue('The gas breathed holds helium, and the equivalent air depth is for gases without.');
  return breathed;
}

function cylinders(view: View) {
  const supply = view.supply();
  if (!supply) throw new NoValue('The script lists no cylinders.');
  return supply.real;
}

/** What the gas breathed does: oxygen, narcosis, density, supply. */
export const GAS_FACTS: readonly MomentFact[] = [
  {
    of: 'moment',
    name: 'oxygenBar',
    dimension: 'pressure',
    meaning: 'Oxygen pressure of the gas breathed.',
    noun: 'the oxygen pressure',
    value: (view, sample) => view.oxygen().pO2Bar[sample]!,
  },
  {
    of: 'moment',
    name: 'oxygenClockPercent',
    dimension: 'percent',
    meaning: 'How much of the published single-exposure oxygen limit has been used.',
    noun: 'the single-exposure oxygen used',
    value: (view, sample) => view.oxygen().singleFraction[sample]! * PERCENT,
  },
  {
    of: 'moment',
    name: 'oxygenDayPercent',
    dimension: 'percent',
    meaning: 'How much of the published 24-hour oxygen limit has been used.',
    noun: 'the day’s oxygen used',
    value: (view, sample) => view.oxygen().dailyFraction[sample]! * PERCENT,
  },
  {
    of: 'moment',
    name: 'pulmonaryUnits',
    dimension: 'plain',
    meaning: 'Units of pulmonary oxygen dose since the script began.',
    noun: 'the pulmonary oxygen dose',
    value: (view, sample) => view.oxygen().pulmonaryUnits[sample]!,
  },
  {
    of: 'moment',
    name: 'modM',
    dimension: 'depth',
    parameters: ['pressure'],
    meaning: 'Maximum operating depth of the gas breathed under an oxygen limit.',
    noun: 'the maximum operating depth at {1}',
    format: 'm 1',
    value: (view, sample, [limitBar]) => gasModM(gas(view, sample), limitBar!, view.timeline),
  },
  {
    of: 'moment',
    name: 'hypoxicAboveM',
    dimension: 'depth',
    meaning:
      'The shallowest depth at which the gas breathed has the customary least of oxygen, 0.16 bar; 0 when it has at the surface.',
    noun: 'the shallowest depth for this gas',
    format: 'm 1',
    value: (view, sample) => hypoxicAboveM(gas(view, sample), view.timeline),
  },
  {
    of: 'moment',
    name: 'eadM',
    dimension: 'depth',
    meaning: 'Equivalent air depth of the gas breathed.',
    noun: 'the equivalent air depth',
    format: 'm 1',
    value: (view, sample) => equivalentAirDepthM(withoutHelium(view, sample), depthM(view, sample), view.timeline),
  },
  {
    of: 'moment',
    name: 'endM',
    dimension: 'depth',
    meaning: 'Equivalent narcotic depth, oxygen counted as narcotic.',
    noun: 'the equivalent narcotic depth',
    format: 'm 1',
    value: (view, sample) =>
      equivalentNarcoticDepthM(gas(view, sample), depthM(view, sample), 'nitrogen and oxygen', view.timeline),
  },
  {
    of: 'moment',
    name: 'endNitrogenM',
    dimension: 'depth',
    meaning: 'Equivalent narcotic depth, nitrogen alone counted.',
    noun: 'the equivalent narcotic depth, nitrogen alone counted',
    format: 'm 1',
    value: (view, sample) =>
      equivalentNarcoticDepthM(gas(view, sample), depthM(view, sample), 'nitrogen', view.timeline),
  },
  {
    of: 'moment',
    name: 'gasDensityGL',
    dimension: 'density',
    meaning: 'Density of the gas breathed.',
    noun: 'the density of the gas breathed',
    value: (view, sample) => view.densityGL()[sample]!,
  },
  {
    of: 'moment',
    name: 'gasOxygenPercent',
    dimension: 'percent',
    meaning: 'Oxygen in the gas breathed.',
    noun: 'the oxygen in the gas breathed',
    value: (view, sample) => gas(view, sample).o2 * PERCENT,
  },
  {
    of: 'moment',
    name: 'gasHeliumPercent',
    dimension: 'percent',
    meaning: 'Helium in the gas breathed.',
    noun: 'the helium in the gas breathed',
    value: (view, sample) => gas(view, sample).he * PERCENT,
  },
  {
    of: 'moment',
    name: 'cylinderBar',
    dimension: 'pressure',
    parameters: ['cylinder'],
    meaning: 'What the gauge of a cylinder shows, as a real gas; cylinders are numbered as the script lists them.',
    noun: 'the pressure in cylinder {1}',
    format: 'cylinder',
    value(view, sample, [number]) {
      const track = cylinders(view).cylinders[number! - 1];
      if (!track) throw new NoValue(`The script has no cylinder ${number}.`);
      return track.pressureBar[sample]!;
    },
  },
  {
    of: 'moment',
    name: 'gasUsedL',
    dimension: 'volume',
    meaning: 'Gas breathed from all cylinders since the script began, at 1 bar.',
    noun: 'the gas used',
    value: (view, sample) =>
      cylinders(view).cylinders.reduce((sum, { usedL }) => sum + usedL[sample]!, cylinders(view).unsuppliedL[sample]!),
  },
];
